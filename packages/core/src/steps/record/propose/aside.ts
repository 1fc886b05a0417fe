/** Why a stretch between two cycles is set aside: the row of cycles knows no gaps. */
export const betweenCycles = 'between cycles';
/** Why a stretch is set aside that a person has refused as a cycle. */
export const notACycle = 'not a cycle';
