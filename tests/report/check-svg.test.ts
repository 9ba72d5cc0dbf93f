import { describe, expect, it } from "vitest";
import { checkedSvg } from "../../src/report/check-svg.js";

const svg = (inner: string, attributes = ""): string =>
  `<svg xmlns="http://www.w3.org/2000/svg"${attributes}>${inner}</svg>`;

describe("checkedSvg", () => {
  it.each([
    svg(""),
    svg(
      '<title id="t">a &lt; b, on = 1</title><style>#a{--ink:#111}@media print{#a .s-ink{stroke:var(--ink)}}</style>',
    ),
    svg(
      '<defs><pattern id="h"><path d="M0 0h1"/></pattern></defs><rect fill="url(#h)" width="1"/><use href="#h"/>',
    ),
    svg("<text x='1'>\n 12.6 V</text>"),
  ])("%s may stand in a page", (picture) => {
    expect(checkedSvg(`\n${picture}\n`, "picture")).toBe(picture);
  });

  it.each([
    ["", "begins with <svg"],
    ["<svgx></svgx>", "begins with <svg"],
    ["<!doctype svg><svg></svg>", "begins with <svg"],
    [svg("<script>1</script>"), "elements of a drawing"],
    [svg("<SCRIPT>1</SCRIPT>"), "elements of a drawing"],
    [svg("<script/>"), "elements of a drawing"],
    [svg("<foreignObject></foreignObject>"), "elements of a drawing"],
    [svg('<a href="#x">a</a>'), "elements of a drawing"],
    [svg('<image href="#x"/>'), "elements of a drawing"],
    [svg('<animate attributeName="href"/>'), "elements of a drawing"],
    [svg("", ' onload="alert(1)"'), "event attribute"],
    [svg("", ' ONLOAD = "alert(1)"'), "event attribute"],
    [svg("<rect\nonclick='a'/>"), "event attribute"],
    [svg("<rect a=\"x>\" onclick='a'/>"), "event attribute"],
    [svg("<rect/onclick='a'/>"), "well-formed"],
    [svg("<rect onclick=a/>"), "well-formed"],
    [svg('<use href="https://example.org/a.svg#b"/>'), "inside the picture"],
    [svg('<use xlink:href="data:x"/>'), "inside the picture"],
    [svg('<rect fill="url(https://example.org/a)"/>'), "load nothing"],
    [svg('<rect fill="url(&quot;//example.org&quot;)"/>'), "load nothing"],
    [svg("<style>@import '//example.org'</style>"), "load nothing"],
    [svg("<style>a{background:u\\72l(//example.org)}</style>"), "load nothing"],
    [svg("<!-- a -->"), "well-formed"],
    [svg("<![CDATA[ a ]]>"), "well-formed"],
    [svg("<?xml a?>"), "well-formed"],
    [svg("a < b"), "well-formed"],
    [svg("<g>"), "closed in its place"],
    ["<svg>", "each element closed"],
    [`${svg("")}${svg("")}`, "one svg element"],
    [`${svg("")}text`, "nothing beside"],
  ])("%s is refused: %s", (picture, why) => {
    expect(() => checkedSvg(picture, "pictures[0]")).toThrow(RangeError);
    expect(() => checkedSvg(picture, "pictures[0]")).toThrow(why);
  });
});
