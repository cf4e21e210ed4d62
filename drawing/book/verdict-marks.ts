/**
 * Which mark stands before a verdict's word? Two faces and the room between; a wedge; jaws round dust; one piece inside the other.
 * Drawn as in the look, 30 by 22 px, black; the last is for a black plate.
 */
const svg = (inner: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 30 22" width="30" height="22" fill="none" stroke="#000" stroke-width="2" stroke-linecap="round" stroke-linejoin="round">${inner}</svg>`;

const FITS = svg(
  `<path stroke-width="2.8" d="M6 3V19M24 3V19"/><path d="M10 11H20M10 11l3-3M10 11l3 3M20 11l-3-3M20 11l-3 3"/>`,
);
const WORK = svg(
  `<path stroke-width="2.8" d="M5 3V19M25 3V19"/><path stroke="none" fill="#000" d="M9 18L21 18L21 5Z"/>`,
);
const MEASURE = svg(
  `<path d="M4 3H4V19M26 3V19M4 3H9M26 3H21"/><path stroke-width="2.2" d="M12 8h.01M16 7h.01M19 10h.01M11 12h.01M15 11.5h.01M18 14h.01M13 15h.01M15.5 16h.01"/>`,
);
const NO = svg(
  `<g stroke="#fff"><path stroke-width="2.8" d="M15 3V19"/><path d="M2 5H15V17H2Z"/><path fill="#fff" d="M15 5H28V17H15Z"/><path d="M6 11H14M10 7l4 4-4 4"/></g>`,
);

export const VERDICT_MARKS: Readonly<Record<string, string>> = {
  fits: FITS,
  within: FITS,
  "no problem found": FITS,
  "fits with work": WORK,
  "measure first": MEASURE,
  "not checked yet": MEASURE,
  "will not fit": NO,
  over: NO,
};
