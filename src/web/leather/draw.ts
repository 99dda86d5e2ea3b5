import { type Svg, Element as SvgElement } from "@svgdotjs/svg.js";
import type { Spec } from "./specs.ts";

// Puts specs on the screen. What is there already is kept where it is of the same kind, and only what
// differs is set anew: a keystroke then changes a handful of attributes.

type Parent = Pick<Svg, "node" | "add">;

const SVG_NAMES = "http://www.w3.org/2000/svg";

function fresh(tag: Spec["tag"]): SVGElement {
  return document.createElementNS(SVG_NAMES, tag) as SVGElement;
}

function setAttributes(node: SVGElement, attrs: Spec["attrs"]): void {
  for (const { name } of [...node.attributes]) if (!(name in attrs)) node.removeAttribute(name);
  for (const [name, value] of Object.entries(attrs))
    if (node.getAttribute(name) !== value) new SvgElement(node).attr(name, value);
}

/** Makes the children of `parent` be those of the specs, in their order. */
export function draw(parent: Parent, specs: readonly Spec[]): void {
  specs.forEach((spec, i) => {
    let node = parent.node.children[i] as SVGElement | undefined;
    if (node?.tagName !== spec.tag) {
      const made = fresh(spec.tag);
      if (node) node.replaceWith(made);
      else parent.add(new SvgElement(made));
      node = made;
    }
    setAttributes(node, spec.attrs);
    if (spec.text !== undefined) {
      if (node.textContent !== spec.text) node.textContent = spec.text;
    } else draw(new SvgElement(node) as unknown as Parent, spec.inside ?? []);
  });
  while (parent.node.children.length > specs.length) parent.node.lastElementChild!.remove();
}
