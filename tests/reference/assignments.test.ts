import {
  assignmentCost,
  bestAssignment,
  exactAssignment,
  type QuadraticAssignment,
} from '@evenhand/core/develop';
import { describe, expect, it } from 'vitest';
import { matrixOf, publishedAssignments } from './published-assignments.ts';

function problemOf(first: string, second: string): QuadraticAssignment {
  const [flow, distance] = [matrixOf(first), matrixOf(second)];
  const items = Math.sqrt(flow.length);
  return { items, spots: items, flow, distance, linear: new Float64Array(items * items) };
}

describe('quadratic assignment instances with published optima (QAPLIB, Burkard, Karisch and Rendl 1997)', () => {
  it.each(publishedAssignments)(
    '$name, $about: the published permutation costs $optimum',
    ({ first, second, optimum, permutation }) => {
      const order = permutation.map((number) => number - 1);
      expect([...order].sort((a, b) => a - b)).toEqual(order.map((_, index) => index));
      // The copy does not say which of both matrices it permutes.
      const costs = [problemOf(first, second), problemOf(second, first)].map((problem) =>
        assignmentCost(problem, order),
      );
      expect(costs).toContain(optimum);
    },
  );

  it.each(publishedAssignments)('$name: $optimum is found and proven', ({ first, second, optimum }) => {
    const problem = problemOf(first, second);
    const found = bestAssignment(problem, { seed: 1 });
    expect([found.cost, found.bound, found.proven]).toEqual([optimum, optimum, true]);
    expect(assignmentCost(problem, found.spotOf ?? [])).toBe(optimum);
  });

  it.each(publishedAssignments)(
    '$name: stopped early, the bound is no more than $optimum',
    ({ first, second, optimum }) => {
      for (const nodes of [0, 1, 10, 100]) {
        const { bound, cost } = exactAssignment(problemOf(first, second), { nodes });
        expect(bound).toBeLessThanOrEqual(optimum);
        expect(cost).toBeGreaterThanOrEqual(optimum);
      }
    },
  );
});
