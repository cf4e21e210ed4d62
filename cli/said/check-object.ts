/** What does `check --json` give? The same answers as the page, as one object with full precision. */
import type { CandidateAnswer, JointAnswer } from "@coldset/core/fit";
import type { Answered, Band, Caution } from "@coldset/core/quantity";
import { type Reckoning, readingWords } from "@coldset/core/questions";
import { STANDING_TEXT, standingRefusals } from "@coldset/core/safety";

export function checkObject(r: Reckoning): Answered<Readonly<Record<string, unknown>>> {
  const { build, donor } = r.resolved;
  const side = (f: Reckoning["after"]) => (f === undefined ? null : f.figures.value);
  const value = {
    build: { id: build.id, title: build.title, donor: donor.id },
    board: r.board,
    geometry: {
      before: side(r.geometry.before),
      after: side(r.after),
      reading_set_aside:
        r.geometry.setAside === undefined
          ? null
          : { name: r.geometry.setAside, words: readingWords(r.geometry.setAside) },
    },
    cockpit: { chosen: r.cockpit.chosen ?? null, post: r.cockpit.post ?? null, missing: r.cockpit.missing },
    toe: r.toe,
    joints: r.joints.joints.map((j) => jointObject(j, r.joints.reckoned.get(j.id)?.id)),
    forks: r.forks.map((f) => ({
      id: f.part.id,
      chosen: f.chosen,
      figures: f.figures?.value ?? null,
      bands: f.figures?.bands ?? {},
      toe: f.toe,
      joints: candidateJoints(f.answer),
    })),
    others: r.others.map((o) => ({ place: o.place, part: o.part.id, joints: candidateJoints(o.answer) })),
    rules: r.rules,
    /** Refusals that stand on something chosen: with any of them the command ends with 3. */
    refusals_standing: standingRefusals(r.rules).map((f) => ({ rule: f.rule, about: f.about, here: f.here })),
    ledger: {
      money: r.ledger.money,
      hours: r.ledger.hours,
      mass: r.ledger.mass,
      alternatives: r.ledger.alternatives,
      lines: r.ledger.lines.map((l) => ({
        part: l.part.id,
        kind: l.part.kind,
        places: l.places,
        qty: l.qty,
        cost: l.cost ?? null,
      })),
    },
    next: r.next,
    standing_text: STANDING_TEXT,
  };
  return { kind: "answered" as const, value, bands: bandsOf(r), sources: sourcesOf(r), cautions: cautionsOf(r) };
}

function jointObject(j: JointAnswer, reckoned: string | undefined) {
  return { ...j, reckoned_remedy: reckoned ?? null };
}

const candidateJoints = (a: CandidateAnswer) => a.joints.map((j) => jointObject(j, a.reckoned.get(j.id)?.id));

function bandsOf(r: Reckoning): Readonly<Record<string, Band>> {
  const out: Record<string, Band> = {};
  for (const [when, side] of [
    ["before", r.geometry.before],
    ["after", r.after],
  ] as const)
    for (const [key, band] of Object.entries(side?.figures.bands ?? {})) out[`geometry.${when}.${key}`] = band;
  return out;
}

export function sourcesOf(r: Reckoning): readonly string[] {
  const ledger = [r.ledger.money, r.ledger.mass, r.ledger.hours].flatMap((a) =>
    a.kind === "answered" ? a.sources : [],
  );
  return [...new Set([...r.board.flatMap((b) => b.sources), ...r.joints.joints.flatMap((j) => j.sources), ...ledger])];
}

export function cautionsOf(r: Reckoning): readonly Caution[] {
  const all = [
    ...r.board.flatMap((b) => b.cautions),
    ...r.joints.joints.flatMap((j) => j.cautions),
    ...r.joints.cautions,
  ];
  return [...new Map(all.map((c) => [`${c.code} ${c.at ?? ""} ${c.message}`, c])).values()];
}
