export {
  clearProposals,
  confirmAbove,
  confirmCycle,
  confirmProposed,
  proposalEdit,
  refuseCycle,
  refuseMotion,
} from './commands.ts';
export { confidenceText } from './confidence-words.ts';
export { nextToReview, type ReviewItem, reviewOrder } from './review-order.ts';
