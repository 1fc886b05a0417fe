export { carriedTogether, exchanged, movedBefore, moveInRow, toOtherHand } from './hand-orders.ts';
export { type JudgedOrders, judgeOrders } from './judge-orders.ts';
