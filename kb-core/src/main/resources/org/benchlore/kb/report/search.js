"use strict";
// Searches benchloreIndex (search-index.js) as one types. Texts only ever become text nodes.
(() => {
  const MOST = 60;
  const FILLERS = new Set(["a", "an", "and", "at", "by", "for", "in", "is", "it", "of", "on", "or", "the", "to", "with"]);
  const WEIGHTS = { name: [14, 9], alias: [7, 4.5], text: [2, 1] };
  const field = document.getElementById("q");
  const form = document.getElementById("search");
  const results = document.getElementById("results");
  const status = document.getElementById("status");
  const browse = document.getElementById("browse");

  // As SearchData.folded does it.
  const fold = (text) =>
    text.toLowerCase().normalize("NFKD").replace(/\p{M}+/gu, "")
      .replace(/(?<![\p{L}\p{N}])[-\u2212](?=\p{N})/gu, "minus ").match(/\p{L}+|\p{N}+/gu) || [];
  const padded = (words) => " " + words.join(" ") + " ";
  // "capacitors" also finds "capacitor"; what is typed is a beginning, so the other way round needs nothing.
  const stem = (word) => (/^\p{L}{3,}[^s]s$/u.test(word) ? word.slice(0, -1) : word);

  const entries = benchloreIndex.entries.map(([kind, id, name, note, about, aliases, phrases, words]) => {
    const nameWords = fold(name);
    return {
      kind: benchloreIndex.kinds[kind], order: kind, id, name, note, about, aliases,
      nameText: padded(nameWords), length: nameWords.length,
      aliasTexts: aliases.map((alias) => padded(fold(alias))).concat(padded(fold(id))),
      aliasText: padded(aliases.flatMap(fold).concat(fold(id))),
      phrases: "|" + phrases + "|",
      text: " " + words + " ",
    };
  });

  const path = (entry) => entry.kind + "/" + entry.id.replaceAll("/", ".") + ".html";

  // Two letters begin too many words.
  const within = (text, word, [whole, begun]) =>
    text.includes(" " + word + " ") ? whole : word.length > 2 && text.includes(" " + word) ? begun : 0;

  // Name before other names before text; every word counts where it counts most. Then what fits as a whole.
  const score = (entry, words, phrase) => {
    let sum = 0;
    let met = 0;
    for (const word of words) {
      const best = Math.max(
        within(entry.nameText, word, WEIGHTS.name),
        within(entry.aliasText, word, WEIGHTS.alias),
        within(entry.text, word, WEIGHTS.text));
      sum += best;
      met += best > 0 ? 1 : 0;
    }
    if (entry.nameText === phrase) sum += 30;
    else if (entry.aliasTexts.includes(phrase) || entry.phrases.includes("|" + phrase.trim() + "|")) sum += 24;
    else if (phrase.includes(entry.nameText)) sum += 14;
    else if (entry.nameText.startsWith(phrase.trimEnd())) sum += 8;
    else if (entry.aliasTexts.some((alias) => phrase.includes(alias))) sum += 8;
    else if (entry.phrases.includes("|" + phrase.trim())) sum += 6;
    return { entry, met, sum: sum - 0.3 * entry.length - 0.1 * entry.order };
  };

  const find = (query, kind) => {
    const typed = fold(query);
    const telling = typed.filter((word) => !FILLERS.has(word));
    const words = (telling.length ? telling : typed).map(stem);
    if (!words.length) return { hits: [], partly: false };
    const phrase = padded(typed);
    const scored = entries
      .filter((entry) => !kind || entry.kind === kind)
      .map((entry) => score(entry, words, phrase))
      .filter((hit) => hit.met > 0);
    const most = scored.reduce((met, hit) => Math.max(met, hit.met), 0);
    const hits = scored.filter((hit) => hit.met === most && 2 * most >= words.length);
    hits.sort((a, b) => b.sum - a.sum || (a.entry.id < b.entry.id ? -1 : 1));
    return { hits, partly: most < words.length, words };
  };

  const element = (tag, style, text) => {
    const made = document.createElement(tag);
    if (style) made.className = style;
    if (text) made.textContent = text;
    return made;
  };

  const item = ({ entry }, words) => {
    const li = element("li", entry.kind);
    const link = element("a", "", entry.name);
    link.href = path(entry);
    li.append(element("span", "kind", entry.kind), " ", link);
    if (entry.note) li.append(" ", element("span", "note", entry.note));
    const other = entry.aliases.find((alias) => {
      const text = padded(fold(alias));
      return words.every((word) => text.includes(" " + word));
    });
    if (other && other.toLowerCase() !== entry.name.toLowerCase()) li.append(element("p", "also", "also: " + other));
    li.append(element("p", "about", entry.about));
    return li;
  };

  const kindChosen = () => form.querySelector("input[name=kind]:checked").value;

  const show = () => {
    const query = field.value.trim();
    const { hits, partly, words } = find(query, kindChosen());
    results.replaceChildren(...hits.slice(0, MOST).map((hit) => item(hit, words)));
    browse.hidden = query !== "" && hits.length > 0;
    const count = hits.length === 1 ? "1 entry" : hits.length + " entries";
    const shown = hits.length > MOST ? ", the first " + MOST + " shown" : "";
    status.textContent = !query ? ""
      : !hits.length ? "Nothing found. Try fewer or other words."
      : partly ? "No entry has all words; " + count + " with most of them" + shown + "."
      : count + shown + ".";
  };

  // index.html#benchlore:cause/ID is the link that other tools store.
  const jump = (link) => {
    const entry = entries.find((e) => "benchlore:" + e.kind + "/" + e.id === link);
    if (entry) location.replace(path(entry));
    else status.textContent = "There is no entry " + link + " here.";
  };

  const decoded = (text) => {
    try {
      return decodeURIComponent(text.replaceAll("+", " "));
    } catch {
      return text;
    }
  };

  const read = () => {
    const hash = location.hash.slice(1);
    if (hash.startsWith("benchlore:")) {
      jump(decoded(hash));
      return;
    }
    const given = new URLSearchParams(hash.startsWith("q=") ? hash : location.search);
    field.value = given.get("q") || "";
    const kind = [...form.elements.kind].find((choice) => choice.value === (given.get("kind") || ""));
    if (kind) kind.checked = true;
    show();
  };

  const remember = () => {
    const asked = new URLSearchParams({ q: field.value.trim() });
    if (kindChosen()) asked.set("kind", kindChosen());
    try {
      history.replaceState(null, "", field.value.trim() ? "#" + asked : location.pathname);
    } catch {
      // some browsers refuse it for files; the search works all the same
    }
  };

  form.addEventListener("input", () => { show(); remember(); });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const first = results.querySelector("a");
    if (first) first.focus();
  });
  document.addEventListener("keydown", (event) => {
    const typing = event.target === field;
    const links = [...results.querySelectorAll("a")];
    const at = links.indexOf(document.activeElement);
    if (event.key === "/" && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
      field.focus();
      field.select();
    } else if (event.key === "ArrowDown" && (typing || at >= 0) && at + 1 < links.length) {
      links[at + 1].focus();
    } else if (event.key === "ArrowUp" && at >= 0) {
      (at > 0 ? links[at - 1] : field).focus();
    } else {
      return;
    }
    event.preventDefault();
  });
  window.addEventListener("hashchange", read);
  read();
  if (!location.hash && !location.search) field.focus();
})();
