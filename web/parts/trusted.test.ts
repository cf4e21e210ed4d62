import { describe, expect, it } from "vitest";
import { onlyDrawing, onlyOwnScript, POLICY_NAME } from "./trusted.js";

describe("what may become markup", () => {
  it("is a drawing", () => {
    const drawing =
      '<svg xmlns="http://www.w3.org/2000/svg"><text>1 only= 2 &lt;script&gt;</text>' +
      '<a class="balloon" href="/ask/07" aria-label="a &gt; b, only=1"><path d="M0 0"/></a></svg>';
    expect(onlyDrawing(drawing)).toBe(drawing);
  });

  it.each([
    "<p>text</p>",
    "<svg><script>alert(1)</script></svg>",
    "<svg><SCRIPT href='x'/></svg>",
    "<svg onload=alert(1)></svg>",
    '<svg><rect onclick = "x"/></svg>',
    "<svg><foreignObject><p/></foreignObject></svg>",
    '<svg><a href="javascript:alert(1)"><text>x</text></a></svg>',
    '<svg><a href="//workshop.example/"><text>x</text></a></svg>',
    '<svg><path fill="url(http://workshop.example/x)"/></svg>',
    '<svg><text style="color: red">x</text></svg>',
    '<svg><rect onclick="x"/></svg>',
    "<svg><text>a < b</text></svg>",
    '<svg><text x="1"onload="x">a</text></svg>',
    '<svg><use href="http://workshop.example/x.svg#a"/></svg>',
    '<svg><image href="http://workshop.example/x.png"/></svg>',
    '<svg><animate attributeName="href" values="x"/></svg>',
    "<svg><!--x--></svg>",
  ])("is not %s", (text) => {
    expect(() => onlyDrawing(text)).toThrow("no drawing");
  });
});

it("only the script that keeps the page may be run beside it", () => {
  expect(onlyOwnScript("/service-worker.js")).toBe("/service-worker.js");
  for (const other of ["/assets/main.js", "http://workshop.example/service-worker.js", "/service-worker.js?x"])
    expect(() => onlyOwnScript(other)).toThrow("no script");
  expect(POLICY_NAME).toBe("coldset");
});
