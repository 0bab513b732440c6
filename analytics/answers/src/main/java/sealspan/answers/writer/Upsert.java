package sealspan.answers.writer;

import sealspan.avro.PackedBundle;
import sealspan.table.LedgerEntry;
import sealspan.table.QuarantinedRow;

/**
 * Rows that are to stand under one key.
 *
 * @param key the key, unique over everything in the read model
 * @param revision revision of the rows
 * @param rule what holds when the key is known already
 * @param content a {@link PackedBundle}, or a single row
 */
record Upsert(String key, long revision, Rule rule, Object content) {
  /** Of the keys that stand in the private file: those of bundles, which may move to a layer. */
  static final String MAY_MOVE =
      "not starts_with(key, 'quarantined/') and not starts_with(key, 'ledger/')";

  /** What holds when a key is known already. */
  enum Rule {
    /** The one with the greater revision; of equal ones, the later. */
    NEWEST,
    /** The one that was there first. */
    FIRST
  }

  /** Class of the bundle or of the row. */
  Class<?> type() {
    return content instanceof PackedBundle bundle ? bundle.type() : content.getClass();
  }

  static Upsert of(PackedBundle bundle) {
    return new Upsert(bundle.key(), bundle.revision(), Rule.NEWEST, bundle);
  }

  /** A row that is quarantined again keeps the day on which it was first seen. */
  static Upsert of(QuarantinedRow row) {
    return new Upsert("quarantined/" + row.id(), 0, Rule.FIRST, row);
  }

  static Upsert of(LedgerEntry entry) {
    return new Upsert("ledger/" + entry.id(), 0, Rule.FIRST, entry);
  }

  /** Whether this is to stand although something with that revision stands under the key. */
  boolean replaces(long known) {
    return rule == Rule.NEWEST && revision >= known;
  }
}
