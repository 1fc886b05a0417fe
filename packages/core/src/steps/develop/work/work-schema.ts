// The study keeps works, so the ground owns their shape.
export {
  type StepMotion,
  type Work,
  type WorkBench,
  type WorkPlace,
  type WorkStep,
  workFormatVersion,
  workSchema,
} from '../../../ground/study/index.ts';
