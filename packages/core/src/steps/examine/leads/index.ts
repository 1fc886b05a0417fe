export { findLeads } from './find-leads.ts';
export type {
  EvidenceFigure,
  Lead,
  LeadCode,
  LeadContext,
  LeadDraft,
  LeadList,
  LeadRule,
  Remedy,
} from './lead.ts';
export { leadRules } from './rules.ts';
