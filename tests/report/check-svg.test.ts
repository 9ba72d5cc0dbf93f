import { describe, expect, it } from "vitest";
import { checkedSvg } from "../../src/report/check-svg.js";

const svg = (inner: string, attributes = ""): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" id="a"${attributes}>${inner}</svg>`;

describe("checkedSvg", () => {
  it.each([
    svg(""),
    svg(
      '<title id="a-t">a &lt; b, on = 1</title><style>#a{--ink:#111}@media print{#a .s-ink{stroke:var(--ink)}}</style>',
    ),
    svg(
      '<defs><pattern id="a-h"><path d="M0 0h1"/></pattern></defs><rect fill="url(#a-h)" width="1"/><use href="#a-h"/>',
    ),
    svg("<style>#a .b > g, #a-t{fill:none;align-content:start;--content:1}#a.x{fill:url(#a-h)}</style>"),
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
    [svg("<style>body{fill:none}</style>"), "selectors that begin"],
    [svg("<style>#a,p{fill:none}</style>"), "selectors that begin"],
    [svg("<style>#a~p{fill:none}</style>"), "selectors that begin"],
    [svg("<style>#a + p{fill:none}</style>"), "selectors that begin"],
    [svg("<style>#a:has(p){fill:none}</style>"), "selectors that begin"],
    [svg("<style>#ab{}#b{}</style>").replace(' id="a"', ' id="b"'), "selectors that begin"],
    [svg("<style>#a{}</style>").replace(' id="a"', ""), "selectors that begin"],
    [svg("<style>@media print{body{display:none}}</style>"), "selectors that begin"],
    [svg("<style>@media print{#a{fill:none}</style>"), "each rule closed"],
    [svg("<style>@media print{@media print{#a{fill:none}}}</style>"), "style rules"],
    [svg("<style>#a{fill:none}}p{fill:none}</style>"), "style rules"],
    [svg("<style>#a{g{fill:none}}</style>"), "style rules"],
    [svg("<style>@layer a{#a{fill:none}}</style>"), "style rules"],
    [svg("<style>#a{fill:none;position:fixed}</style>"), "only draw"],
    [svg("<style>#a g{Content : 'x'}</style>"), "only draw"],
    [svg("<style>#a{posi&#116;ion:fixed}</style>"), "only draw"],
    [svg("<style>#a{fill:image-set('x' 1x)}</style>"), "load nothing"],
    [svg("<style>#a{fill:url(b.svg#c)}</style>"), "load nothing"],
    [svg('<g style="position:fixed"/>'), "only draw"],
    [svg('<g style="posi&#116;ion:fixed"/>'), "only draw"],
    [svg('<rect fill="u&#114;l(//example.org)"/>'), "load nothing"],
    [svg('<rect fill="url&lpar;//example.org)"/>'), "entities of XML"],
    [svg('<g id="b"/>'), "ids that begin"],
    [svg('<g id="ab"/>'), "ids that begin"],
    [svg("<style>#ab{fill:none}</style>"), "selectors that begin"],
    [svg('<g id="a"/>').replace(' id="a"', ""), "ids that begin"],
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
