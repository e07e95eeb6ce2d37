/**
 * Whole histories as benches keep them, diaries, tables and lines of JSON, read into drafts of cases that people look at
 * before anything is stored. Read {@link org.benchlore.kb.importing.Importer} first; a record goes from
 * {@code DiarySplitter} or {@code TableRecords} through {@code ActReader}, which hears what was done and reached, to
 * {@code Story}, which makes the events.
 *
 * <pre>{@code
 * Importer importer = new Importer(knowledge, Reader.of(knowledge), store);
 * ImportReview review = importer.review(in, "diary.txt", ImportSettings.of(ImportKind.DIARY));
 * review.drafts().forEach(draft -> System.out.println(draft.line() + ": " + draft.told()));
 * ImportResult result = importer.store(review, CaseHistory.OWN, false);
 * }</pre>
 */
@NullMarked
package org.benchlore.kb.importing;

import org.jspecify.annotations.NullMarked;
