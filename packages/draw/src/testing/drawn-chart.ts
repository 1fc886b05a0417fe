import type { Scene, SceneNode } from '@evenhand/core/ground/scene';
import { emptyStudy, type Method, type Study } from '@evenhand/core/ground/study';
import { fundamentalMotions } from '@evenhand/core/ground/tables';
import { chartFacts, processChart, twoHandChart } from '@evenhand/core/record';

/** A study without a film in which each hand goes through all eighteen motions, so that every colour and pattern occurs. */
export function everyMotion(words: string): Study {
  const row = (step: number): Method['left'] => ({
    items: fundamentalMotions.map(({ kind }, index) => ({
      id: `m${index}`,
      start: index * step,
      kind,
      object: words,
      said: 'marked',
    })),
    end: 18 * 400_000,
  });
  const end = 18 * 400_000;
  const method: Method = {
    id: 'm',
    name: 'Method',
    kind: 'composed',
    base: { kind: 'micros' },
    unitsPerCycle: 1,
    left: row(400_000),
    right: row(350_000),
    cycles: { items: [{ id: 'c', start: 0 }], end },
  };
  return { ...emptyStudy('study', 'Every motion'), demo: true, methods: [method] };
}

/** Both charts of `everyMotion`. */
export function drawnCharts(words = 'cap'): {
  readonly twoHand: readonly Scene[];
  readonly process: readonly Scene[];
} {
  const facts = chartFacts(everyMotion(words), 'm', { date: '12 May' });
  if (!facts.ok) throw new Error(facts.error.message);
  return {
    twoHand: twoHandChart(facts.value, { paper: 'a4', unit: 'winks', grouping: 'groover' }),
    process: processChart(facts.value, { paper: 'a4' }),
  };
}

/** A small drawing around the nodes. */
export function sceneOf(nodes: readonly SceneNode[], width = 612, height = 792): Scene {
  return { width, height, title: 'Drawing', description: 'A drawing for a test.', nodes };
}
