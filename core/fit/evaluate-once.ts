/**
 * Has this been judged already on the very same inputs? What a joint reads of its view is written down while it is
 * judged; where another view, a candidate's or one after an edit, says the same at all of these places, the answer
 * stands. A function of the view alone that reads the same values takes the same way and gives the same answer, so no
 * joint has to declare what it reads, and none can forget to.
 */
import type { FitView } from "./view.js";

/** Answers of functions of the view, each with what it read. Belongs to one reckoning. */
export interface JudgedOnce {
  /** The answer for this view: an earlier one where nothing that it read differs. `judge` reads its view and nothing else. */
  once<T>(judge: (view: FitView) => T, view: FitView): T;
  /** Nothing more is asked: lets go of what only the earlier reckoning needed. */
  close(): void;
  readonly entries: Entries;
}

type Entries = ReadonlyMap<unknown, readonly Entry[]>;

/** An answer, the places that it read, and what stood there. */
interface Entry {
  readonly slots: readonly Slot[];
  readonly values: readonly unknown[];
  readonly answer: unknown;
}

type Source = Readonly<Record<PropertyKey, unknown>>;

/** One place that can be read: a key of a level, or the list of its keys. */
interface Slot {
  readonly level: Level;
  /** undefined: the list of keys. */
  readonly key: PropertyKey | undefined;
  /** The judging in which it was last written down: each place once. */
  stamp: number;
}

/** A part of the view that is watched key by key; what lies deeper is compared as a whole. */
interface Level {
  readonly slots: Map<PropertyKey, Slot>;
  readonly keyList: Slot;
  readonly below: Map<PropertyKey, Level>;
  readonly watched: object;
  /** What it is in the view at hand. */
  source: Source | undefined;
}

/** Stands for a watched level that is there. */
const PRESENT = Symbol("present");
/** What is written down of the judging at hand; stamp 0 is none. */
const notes = { judging: false, stamp: 0, slots: [] as Slot[], values: [] as unknown[] };

function note(slot: Slot): void {
  if (slot.stamp === notes.stamp) return;
  slot.stamp = notes.stamp;
  notes.slots.push(slot);
  notes.values.push(valueAt(slot));
}

function newLevel(below: Readonly<Record<string, Level>> = {}): Level {
  const list = (): Source => {
    note(level.keyList);
    return level.source ?? {};
  };
  const read = (key: PropertyKey): unknown => {
    note(slotOf(level, key));
    const value = level.source?.[key];
    return typeof value === "object" && value !== null ? (level.below.get(key)?.watched ?? value) : value;
  };
  // The target is empty, so that a frozen document can be watched too.
  const watched = new Proxy(
    {},
    {
      get: (_, key) => read(key),
      has: (_, key) => key in list(),
      ownKeys: () => Reflect.ownKeys(list()),
      getOwnPropertyDescriptor: (_, key) =>
        Object.hasOwn(list(), key)
          ? { value: read(key), enumerable: true, configurable: true, writable: true }
          : undefined,
    },
  );
  const level: Level = {
    slots: new Map(),
    below: new Map(Object.entries(below)),
    watched,
    source: undefined,
    get keyList() {
      return keyList;
    },
  };
  const keyList: Slot = { level, key: undefined, stamp: 0 };
  return level;
}

function slotOf(level: Level, key: PropertyKey): Slot {
  let slot = level.slots.get(key);
  if (slot === undefined) {
    slot = { level, key, stamp: 0 };
    level.slots.set(key, slot);
  }
  return slot;
}

/** What stands at this place of the view at hand. */
function valueAt(slot: Slot): unknown {
  const { level, key } = slot;
  if (key === undefined) return level.source === undefined ? "" : Object.keys(level.source).join("\n");
  const value = level.source?.[key];
  return typeof value === "object" && value !== null && level.below.has(key) ? PRESENT : value;
}

const AT = newLevel();
const PORTS = newLevel();
const FRAME = newLevel();
const FRAME_SD = newLevel();
const BEFORE = newLevel();
const AFTER = newLevel();
const MEASURED = newLevel();
const DONOR = newLevel({ measured: MEASURED });
const BUILD = newLevel();
const INTENT = newLevel();
const RIDER = newLevel();
const SHOP = newLevel();
const RESOLVED = newLevel({ donor: DONOR, build: BUILD, intent: INTENT, rider: RIDER, shop: SHOP });
const VIEW = newLevel({
  at: AT,
  ports: PORTS,
  frame: FRAME,
  frameSd: FRAME_SD,
  before: BEFORE,
  after: AFTER,
  resolved: RESOLVED,
});

/** The view whose values the levels hold. */
let standing: FitView | undefined;

function stand(view: FitView): void {
  if (standing === view) return;
  standing = view;
  const { resolved } = view;
  VIEW.source = view as unknown as Source;
  AT.source = view.at as Source;
  PORTS.source = view.ports;
  FRAME.source = view.frame as Source | undefined;
  FRAME_SD.source = view.frameSd as Source | undefined;
  BEFORE.source = view.before as Source | undefined;
  AFTER.source = view.after as Source | undefined;
  RESOLVED.source = resolved as unknown as Source;
  DONOR.source = resolved.donor as unknown as Source;
  MEASURED.source = resolved.donor.measured as unknown as Source;
  BUILD.source = resolved.build as unknown as Source;
  INTENT.source = resolved.intent as unknown as Source;
  RIDER.source = resolved.rider as unknown as Source;
  SHOP.source = resolved.shop as unknown as Source;
}

/** Does the view at hand say the same at all places that this answer read? */
function stands(entry: Entry): boolean {
  const { slots, values } = entry;
  for (let i = 0; i < slots.length; i++) {
    const slot = slots[i];
    if (slot === undefined || !same(valueAt(slot), values[i])) return false;
  }
  return true;
}

/** Do two values say the same? Plain data and maps by what is in them. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (a instanceof Map) {
    if (!(b instanceof Map) || a.size !== b.size) return false;
    const others = b.entries();
    // In their order: whoever goes through a map may take the first that fits.
    for (const [key, value] of a) {
      const other = others.next().value;
      if (other === undefined || other[0] !== key || !same(value, other[1])) return false;
    }
    return true;
  }
  if (b instanceof Map || Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  const others = Object.keys(b);
  if (keys.length !== others.length) return false;
  for (let i = 0; i < keys.length; i++) {
    const key = keys[i];
    if (key === undefined || key !== others[i] || !same((a as Source)[key], (b as Source)[key])) return false;
  }
  return true;
}

/** @param before of an earlier reckoning: its answers are taken where nothing that they read differs. */
export function judgedOnce(before?: JudgedOnce): JudgedOnce {
  let old: Entries | undefined = before?.entries;
  const entries = new Map<unknown, Entry[]>();
  return {
    entries,
    once<T>(judge: (view: FitView) => T, view: FitView): T {
      // Inside another judging the reads belong to that one.
      if (notes.judging) return judge(view);
      stand(view);
      let own = entries.get(judge);
      if (own === undefined) {
        own = [];
        entries.set(judge, own);
      }
      const known = own.find(stands);
      if (known !== undefined) return known.answer as T;
      const kept = old?.get(judge)?.find(stands);
      if (kept !== undefined) {
        own.push(kept);
        return kept.answer as T;
      }
      notes.judging = true;
      notes.stamp += 1;
      notes.slots = [];
      notes.values = [];
      try {
        const answer = judge(VIEW.watched as FitView);
        own.push({ slots: notes.slots, values: notes.values, answer });
        return answer;
      } finally {
        notes.judging = false;
      }
    },
    close() {
      old = undefined;
      standing = undefined;
    },
  };
}
