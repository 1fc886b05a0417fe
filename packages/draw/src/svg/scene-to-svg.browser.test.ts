import { textsOf } from '@evenhand/core/ground/scene';
import axe from 'axe-core';
import { describe, expect, it } from 'vitest';
import { drawnCharts, sceneOf } from '../testing/drawn-chart.ts';
import { sceneToSvg } from './scene-to-svg.ts';

const namespace = 'http://www.w3.org/2000/svg';

function parse(svg: string): Document {
  const document = new DOMParser().parseFromString(svg, 'image/svg+xml');
  const fault = document.querySelector('parsererror');
  if (fault !== null) throw new Error(fault.textContent ?? 'not well formed');
  return document;
}

const hostile = '<b>&amp;"\'</text>]]> \u0000\u0001\u001b \ud800 \ufffe 部品 👍🏽';

describe('an SVG in the browser', () => {
  it('is well-formed XML with a title, a description and every text as text', () => {
    for (const scene of [...drawnCharts().twoHand, ...drawnCharts().process]) {
      const document = parse(sceneToSvg(scene));
      expect(document.documentElement.namespaceURI).toBe(namespace);
      expect(document.querySelector('title')?.textContent).toBe(scene.title);
      expect(document.querySelector('desc')?.textContent).toBe(scene.description);
      expect([...document.querySelectorAll('text')].map((text) => text.textContent)).toEqual(
        textsOf(scene.nodes).map((node) => node.text),
      );
    }
  });

  it('stays well-formed whatever an analyst writes, and shows it as written but for what XML forbids', () => {
    const text = { kind: 'text', x: 0, y: 10, size: 8, weight: 400, align: 'start', ink: 'ink' } as const;
    const scene = { ...sceneOf([{ ...text, text: hostile }]), title: hostile, description: hostile };
    const document = parse(sceneToSvg(scene, { idPrefix: 'a' }));
    const expected = '<b>&amp;"\'</text>]]>  ?  部品 👍🏽';
    expect(document.querySelector('text')?.textContent).toBe(expected);
    expect(document.querySelector('title')?.textContent).toBe(expected);
  });

  it('refers to nothing outside itself, and every reference inside has its target', () => {
    const document = parse(sceneToSvg(drawnCharts().twoHand[0] ?? sceneOf([])));
    const references = [...document.querySelectorAll('*')].flatMap((element) =>
      [...element.attributes].filter((attribute) =>
        /url\(|^(xlink:)?href$/.test(`${attribute.name} ${attribute.value}`),
      ),
    );
    expect(references.length).toBeGreaterThan(10);
    for (const { value } of references) {
      const id = /^url\(#([\w-]+)\)$/.exec(value)?.[1];
      expect(document.getElementById(id ?? '')?.localName).toBe('pattern');
    }
  });

  it('axe-core finds no serious fault in a page with both charts', async () => {
    const { twoHand, process } = drawnCharts();
    document.title = 'Charts';
    document.documentElement.lang = 'en';
    const main = document.createElement('main');
    for (const [index, scene] of [...twoHand, ...process].entries()) {
      main.innerHTML += sceneToSvg(scene, { idPrefix: `chart-${index}` });
    }
    document.body.replaceChildren(main);
    const { violations } = await axe.run(main);
    expect(violations.filter((item) => item.impact === 'serious' || item.impact === 'critical')).toEqual([]);
    document.body.replaceChildren();
  });
});
