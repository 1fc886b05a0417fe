export { answerQuestion, clearDecision, decide, longestNote, type Noted } from './commands.ts';
export { type KnownAnswer, knownAnswers, openQuestions } from './known-answers.ts';
export { type ExaminationRow, notedExaminations, type ReportedAnswer } from './report.ts';
export { findExamination, isStillThere, sameSubject, subjectWords } from './subjects.ts';
