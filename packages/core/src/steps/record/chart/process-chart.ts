import type { PaperName, Scene } from '../../../ground/scene/index.ts';
import type { ChartFacts } from './facts.ts';

export interface ProcessChartLook {
  readonly paper: PaperName;
}

export function processChart(_facts: ChartFacts, _look: ProcessChartLook): readonly Scene[] {
  return [];
}
