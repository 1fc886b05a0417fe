export { type CycleRun, type RunPair, representativeRuns } from './cycle-run.ts';
export { type CycleTimesLook, cycleTimesPicture } from './cycle-times-picture.ts';
export {
  type DecompositionLook,
  decompositionPicture,
  type PictureStep,
  pictureSteps,
} from './decomposition-picture.ts';
export {
  amountText,
  fieldText,
  type MoneyRow,
  mattersMostWords,
  moneyGivenWords,
  moneyRows,
  paybackText,
} from './money-rows.ts';
export { placeScene } from './place-scene.ts';
export { type ProofPageLook, proofPage } from './proof-page.ts';
export { type TornadoLook, tornadoPicture } from './tornado-picture.ts';
export { type TwoScoresLook, twoScoresOnOneScale, twoScoresWords } from './two-scores.ts';
