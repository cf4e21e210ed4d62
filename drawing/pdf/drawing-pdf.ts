import { type Answer, answered, refused } from "@coldset/core/quantity";
import { say } from "@coldset/core/texts";
import type { Drawing } from "../model/index.js";
import { toSvg } from "../svg/index.js";
import { printable, printableDrawing, type Replaced } from "./printable.js";
import { SCALE_BAR } from "./scale-bar.js";
import { STANDING_TEXT } from "./standing-text.js";
import { typstPdf } from "./typst-pdf.js";

/** How does this drawing look on one page of its own size? The page is the drawing, in vectors, with nothing added. */
export function drawingPdf(drawing: Drawing): Uint8Array {
  const svg = toSvg(printableDrawing(drawing, new Map()), { mode: "print" });
  const heightMm = (drawing.widthMm * drawing.view.heightMm) / drawing.view.widthMm;
  return typstPdf(FIT_PAGE, { svg, label: drawing.label, width: String(drawing.widthMm), height: String(heightMm) })
    .pdf;
}

const FIT_PAGE = `
#set document(date: none)
#let w = float(sys.inputs.width) * 1mm
#set page(width: w, height: float(sys.inputs.height) * 1mm, margin: 0pt)
#set text(fallback: false, font: "Coldset Letter")
#image(bytes(sys.inputs.svg), format: "svg", width: w, alt: sys.inputs.label)
`;

export interface TemplateOptions {
  readonly title: string;
  readonly note?: string;
  /** What still bars the cut, "2 of 4 signatures missing"; while it stands the sheet says NOT TO CUT. */
  readonly notToCut?: string;
  readonly job: string;
  readonly revision: string;
}

/** Room for a template on A4, inside the frame with its binding edge of 14 mm. */
export const TEMPLATE_ROOM_MM = { width: 178, height: 190 } as const;

/**
 * How is this drawing printed at its true size, to be cut out and laid on the part? One A4 page, one world mm is one mm on paper, with a
 * bar of exactly 100 mm and the sentence what to do if it measures otherwise. Refuses a drawing that does not fit on the page:
 * a template is never shrunk.
 */
export function templatePdf(drawing: Drawing, options: TemplateOptions): Answer<{ readonly pdf: Uint8Array }> {
  const { widthMm, heightMm } = drawing.view;
  if (widthMm > TEMPLATE_ROOM_MM.width || heightMm > TEMPLATE_ROOM_MM.height) {
    return refused([
      {
        code: "template-too-large",
        at: "drawing.view",
        given: `${widthMm} x ${heightMm} mm`,
        allowed: say("drawing.drawing-pdf.at-most-x-mm", {
          width: TEMPLATE_ROOM_MM.width,
          height: TEMPLATE_ROOM_MM.height,
        }),
        message: say("drawing.drawing-pdf.the-template-is-x-mm-and", { widthMm, heightMm }),
      },
    ]);
  }
  const replaced: Replaced = new Map();
  const words = (text: string) => printable(text, replaced);
  const whole = printableDrawing({ ...drawing, widthMm }, replaced);
  const { pdf } = typstPdf(SCALE_BAR + TEMPLATE_PAGE, {
    svg: toSvg(whole, { mode: "print" }),
    label: whole.label,
    width: String(widthMm),
    title: words(options.title),
    note: words(options.note ?? ""),
    stamp: words(options.notToCut ?? ""),
    job: words(options.job),
    revision: words(options.revision),
    standing: STANDING_TEXT,
    codes: [...replaced.keys()].join(" "),
  });
  return answered({ pdf });
}

const TEMPLATE_PAGE = `
#let soften(v) = if v.contains("\\u{200b}") { v.split("\\u{200b}").join(box(width: 0pt)) } else { v }
#let i = sys.inputs.pairs().map(((key, v)) => ((key): soften(v))).join()
#set document(title: i.title, date: none)
#set page(paper: "a4", margin: (left: 19mm, right: 13mm, top: 13mm, bottom: 40mm), background: {
  place(top + left, dx: 14mm, dy: 8mm, rect(width: 188mm, height: 281mm, stroke: 0.7mm))
  place(bottom + left, dx: 14mm, dy: -8mm, block(width: 188mm, stroke: (top: 0.7mm), inset: 3mm, {
    set text(font: "Coldset Read", size: 8.5pt)
    set par(leading: 0.4em)
    grid(columns: (1fr, 34mm, 34mm), column-gutter: 4mm, align: left + top, i.standing,
      [job \\ #text(font: "Coldset Letter", weight: 700, size: 11pt, i.job)],
      [scale 1:1 \\ #text(font: "Coldset Letter", weight: 700, size: 11pt, i.revision)])
  }))
})
#set text(font: "Coldset Read", size: 10.5pt, fallback: false, lang: "en")
#grid(columns: (1fr, auto), {
  text(font: "Coldset Letter", weight: 700, size: 21pt, i.title)
  parbreak()
  i.note
}, if i.stamp != "" {
  block(stroke: (left: 2.6mm, right: 2.6mm), inset: (x: 4mm, y: 2mm), align(center, {
    text(font: "Coldset Letter", weight: 700, size: 15pt)[NOT TO CUT]
    linebreak()
    text(font: "Coldset Letter", weight: 500, size: 10pt, i.stamp)
  }))
})
#v(4mm)
#align(center, image(bytes(i.svg), format: "svg", width: float(i.width) * 1mm, alt: i.label))
#v(4mm)
#scale-bar
#if i.codes != "" [Signs that could not be printed are shown as their code: #i.codes]
`;
