/**
 * The bar that proves a template: exactly 100 mm between the middles of its end strokes, tenths marked, and what to do if it measures
 * otherwise. Typst source that defines `scale-bar`.
 */
export const SCALE_BAR = `
#let scale-bar = block(breakable: false, width: 100%, align(center, {
  box(width: 100mm, height: 7mm, {
    for tenth in range(0, 10) {
      if calc.rem(tenth, 2) == 0 {
        place(top + left, dx: tenth * 10mm, dy: 3mm, rect(width: 10mm, height: 1.8mm, fill: black, stroke: none))
      }
      if tenth > 0 { place(top + left, dx: tenth * 10mm, dy: if tenth == 5 { 0.6mm } else { 1.4mm }, line(angle: 90deg, length: if tenth == 5 { 2.4mm } else { 1.6mm }, stroke: 0.25mm)) }
    }
    place(top + left, dy: 3mm, line(length: 100mm, stroke: 0.7mm))
    place(top + left, line(angle: 90deg, length: 6mm, stroke: 0.7mm))
    place(top + left, dx: 100mm, line(angle: 90deg, length: 6mm, stroke: 0.7mm))
  })
  v(-1mm)
  text(font: "Coldset Letter", weight: 700, size: 12pt)[This bar must measure 100.0 ± 0.3. If it does not, the template is wrong: do not cut.]
}))
`;
