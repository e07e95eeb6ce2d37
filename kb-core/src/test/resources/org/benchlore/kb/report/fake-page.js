// As much of a browser as search.js touches; a text that would become markup throws.
class Fake {
  constructor(tag) {
    Object.assign(this, { tag, children: [], textContent: "", value: "", href: "", hidden: false, listeners: {} });
  }
  set innerHTML(text) { throw new Error("markup: " + text); }
  append(...nodes) { this.children.push(...nodes); }
  replaceChildren(...nodes) { this.children = nodes; }
  addEventListener(kind, listener) { this.listeners[kind] = listener; }
  focus() { document.activeElement = this; }
  select() {}
  all(tag) { return this.children.flatMap((c) => (c instanceof Fake ? [c].concat(c.all(tag)) : [])).filter((c) => c.tag === tag); }
  querySelectorAll(tag) { return this.all(tag); }
  querySelector(tag) { return tag === "input[name=kind]:checked" ? this.elements.kind.find((k) => k.checked) : this.all(tag)[0]; }
}

const lenient = (text) => {
  try {
    return decodeURIComponent(text.replaceAll("+", " "));
  } catch {
    return text;
  }
};

class URLSearchParams {
  constructor(given) {
    this.pairs = new Map(typeof given === "string"
      ? given.replace(/^\?/, "").split("&").filter(Boolean).map((p) => p.split("=").map(lenient))
      : Object.entries(given));
  }
  get(key) { return this.pairs.has(key) ? this.pairs.get(key) : null; }
  set(key, value) { this.pairs.set(key, value); }
  toString() { return [...this.pairs].map((p) => p.map(encodeURIComponent).join("=")).join("&"); }
}

const parts = { q: new Fake("input"), search: new Fake("form"), results: new Fake("ul"), status: new Fake("p"), browse: new Fake("div") };
parts.search.elements = { kind: ["", "cause", "symptom", "test", "fix"].map((value) => ({ value, checked: value === "" })) };
const document = { activeElement: null, listeners: {}, getElementById: (id) => parts[id], createElement: (tag) => new Fake(tag),
  addEventListener(kind, listener) { this.listeners[kind] = listener; } };
const location = { hash: "", search: "", pathname: "index.html", gone: "", replace(to) { this.gone = to; } };
const history = { replaceState(state, title, to) { location.hash = to.startsWith("#") ? to : ""; } };
const window = { listeners: {}, addEventListener(kind, listener) { this.listeners[kind] = listener; } };

const shown = () => JSON.stringify({
  status: parts.status.textContent, browse: !parts.browse.hidden, hash: location.hash, gone: location.gone, typed: parts.q.value,
  hits: parts.results.children.map((li) => ({
    kind: li.className, name: li.all("a")[0].textContent, href: li.all("a")[0].href,
    other: li.all("p").filter((p) => p.className === "also").map((p) => p.textContent).join() })) });
const typed = (words, kind) => {
  parts.q.value = words;
  parts.search.elements.kind.forEach((k) => { k.checked = k.value === kind; });
  parts.search.listeners.input();
  return shown();
};
const opened = (hash) => {
  location.hash = hash;
  window.listeners.hashchange();
  return shown();
};
const pressed = (key) => {
  document.listeners.keydown({ key, target: document.activeElement, preventDefault() {} });
  return document.activeElement.textContent;
};
