/** A publication behind a fact. `seen` says how we know what it says: read, read in another's words, or from memory. */
export interface Source {
  readonly reference: string;
  readonly locator?: string;
  readonly seen: 'read' | 'secondary' | 'memory';
}

export const sources = {
  'motion-lecture': {
    reference:
      'Management-science lecture page “therblig figure” (17 symbols, letter codes, colours; in Japanese)',
    locator: 'http://dainahuayi.com/~kazov/Nis/lecture/mansci/therblig_fig.htm',
    seen: 'read',
  },
  barnes: {
    reference: 'R. M. Barnes, Motion and Time Study, chapter on fundamental hand motions',
    seen: 'secondary',
  },
  'barnes-definitions': {
    reference: 'Definitions of the fundamental motions after Barnes',
    locator:
      'https://www.transtutors.com/homework-help/industrial-management/work-study/therblig-definitions.aspx',
    seen: 'secondary',
  },
  'barnes-memory': { reference: 'R. M. Barnes, Motion and Time Study, definitions', seen: 'memory' },
  'niebel-freivalds': {
    reference:
      'B. W. Niebel, A. Freivalds, Methods, Standards and Work Design, table of effective and ineffective motions',
    locator: 'https://www.slideshare.net/slideshow/therbligs-details/88319335',
    seen: 'secondary',
  },
  groover: {
    reference:
      'M. P. Groover, Work Systems and the Methods, Measurement and Management of Work, ch. 10, answer 10.4',
    locator: 'https://www.scribd.com/doc/123235405/Ch10-Motion-Study-s',
    seen: 'secondary',
  },
  'asme-symbols': {
    reference:
      'ANSI Y15.3M-1979 (after the ASME committees; lapsed, still used), quoted in R. Muther, Systematic Layout Planning, fig. 4-2',
    locator: 'https://fliphtml5.com/bhble/ktfi/Systematic-Layout-Planning-Richard-Muther/63',
    seen: 'secondary',
  },
  'two-hand-chart': {
    reference: 'The two-handed process chart, after the ILO',
    locator: 'https://studylib.net/doc/10323826/two-handed-process-chart',
    seen: 'read',
  },
  'motion-chart-form': {
    reference: 'Simultaneous-motion chart, form with columns and heading',
    locator: 'https://www.scribd.com/doc/194967833/Simo-Chart-Rating',
    seen: 'read',
  },
  'motion-economy': {
    reference: 'Principles of motion economy after Barnes, numbered list by N. Rao, 2016',
    locator: 'http://nraomtr.blogspot.com/2016/06/principles-of-motion-economy.html',
    seen: 'secondary',
  },
  'barnes-principles': {
    reference:
      'R. M. Barnes, Motion and Time Study, 7th ed. 1980, ch. 14–17, principles 17–22 and their numbers',
    seen: 'memory',
  },
  'groover-principles': {
    reference: 'M. P. Groover, Work Systems, slides to ch. 10, principles for the use of the body',
    locator: 'https://studylib.net/doc/25793981/10-motion-study',
    seen: 'secondary',
  },
  'motion-classes': {
    reference: 'Classes of movement after the ILO, in slides on the two-handed process chart',
    locator: 'https://studylib.net/doc/10323826/two-handed-process-chart',
    seen: 'secondary',
  },
  'motion-class-effort': {
    reference: 'Principles of motion economy, lecture page: finger motions against motions of the forearm',
    locator: 'http://john-partners.com/blogs/news-1/principles-of-motion-economy',
    seen: 'read',
  },
  'symmetry-test': {
    reference:
      'Re-examination of the principle of symmetrical hands on a pegboard, International Journal of Industrial Ergonomics (abstract)',
    locator: 'https://acnpsearch.tweb-dev.unibo.it/singlejournalindex/70989805',
    seen: 'read',
  },
  'critical-examination': {
    reference: 'Critical examination technique, table 1 of PMC7129597',
    locator: 'https://pmc.ncbi.nlm.nih.gov/articles/PMC7129597/table/tbl1',
    seen: 'read',
  },
  'critical-examination-stages': {
    reference:
      'Critical examination, page that asks about the present facts first and about alternatives after them',
    locator: 'http://www.i-choose-self-improvement.com/critical-examination.html',
    seen: 'read',
  },
  'ilo-examination': {
    reference:
      'ILO, Introduction to Work Study, chapter on critical examination: primary and secondary questions, which head leads to which change',
    seen: 'memory',
  },
  'ansur-2': {
    reference:
      'ANSUR II, NATICK/TR-15/007 (survey of 2012; 1986 women, 4082 men), public data file; percentiles computed from it',
    seen: 'read',
  },
  'work-area-width': {
    reference: 'IASRI e-course, lesson 44: width of the normal and of the maximum work area of women',
    locator: 'http://ecoursesonline.iasri.res.in/mod/page/view.php?id=28523',
    seen: 'secondary',
  },
  'work-area-definition': {
    reference:
      'IMEN 368 lecture, after Sanders and McCormick fig. 10.10: the normal area is the sweep of the forearm, the maximum area that of the straight arm',
    locator: 'http://studyres.com/doc/8656229/?page=5',
    seen: 'secondary',
  },
  'work-height-card': {
    reference:
      'Standing workstation height by kind of work, card of CRE-MSD after S. Pheasant and C. M. Haslegrave, Bodyspace, 3rd ed. 2006; ranges for 90 % of workers',
    locator: 'https://msdprevention.com/resource-library/standing-workstation-height-manual-tasks',
    seen: 'secondary',
  },
  'niosh-programs': {
    reference: 'NIOSH 97-117, Elements of Ergonomics Programs, tray 6: heights of standing work',
    locator: 'https://uzcca.com/more/view/117%20adj/26656191',
    seen: 'secondary',
  },
  'auva-height': {
    reference: 'AUVA (Austria), lexicon, working height',
    locator: 'https://app.auva.at/Lexikon/topic/Arbeitshoehe/?lang=sk',
    seen: 'read',
  },
  'state-fund-height': {
    reference: 'State Fund (California), standing workstation guidelines',
    locator: 'https://statefundcablog.com/standing-workstation-guidelines/',
    seen: 'read',
  },
  'sitting-height-lecture': {
    reference: 'IMEN 368 lecture: the surface of seated work lies at the height of the elbow',
    locator: 'http://studyres.com/doc/8656229/?page=5',
    seen: 'secondary',
  },
  'rating-scales': {
    reference:
      'Scales of rating after the ILO and BS 3138, in a Spanish reproduction; walking 4 miles an hour is standard 100',
    locator: 'https://ingenieriametodos.blogspot.com/2013/04/escalas-de-valoracion-i.html',
    seen: 'secondary',
  },
  'allowances-pounds': {
    reference:
      'W. J. Stevenson, Operations Management, table of relaxation allowances (after the ILO), figures as repeated in teaching slides',
    seen: 'secondary',
  },
  'allowances-kilograms': {
    reference: 'Suplementos por descanso, teaching sheet after the ILO, percent of basic time',
    locator: 'https://www.scribd.com/document/221205839',
    seen: 'secondary',
  },
  'allowances-constant': {
    reference: 'Suplementos, lecture slides after the ILO: constant allowances and contingency',
    locator: 'https://www.scribd.com/document/534159541',
    seen: 'secondary',
  },
  'fitts-tapping': {
    reference:
      'P. M. Fitts, The information capacity of the human motor system in controlling the amplitude of movement, J. Exp. Psychol. 47, 1954, table 1 (1-oz stylus), as printed in I. S. MacKenzie, Fitts’ law, 2018, table 17.1',
    locator: 'https://www.yorku.ca/mack/hhci2018.html',
    seen: 'secondary',
  },
  'fitts-discs': {
    reference: 'P. M. Fitts, as above, table 2 (discs put over pins)',
    seen: 'memory',
  },
  'fitts-tapping-heavy': { reference: 'P. M. Fitts, as above, table 1 (1-lb stylus)', seen: 'memory' },
  'box-and-block': {
    reference:
      'Box and block test, 692 people: S. S. Natta and others, J. Rehabil. Med. 47(10), 2015 (abstract)',
    locator: 'https://www.medicaljournals.se/jrm/content/html/10.2340/16501977-2023',
    seen: 'read',
  },
  'nine-hole-peg': {
    reference: 'V. Mathiowetz, K. Weber, N. Kashman, G. Volland, Occup. Ther. J. Res. 5, 1985, 24–38',
    locator: 'https://www.shakuhachi.net/what-are-the-norms-for-the-9-hole-peg-test/',
    seen: 'secondary',
  },
  'two-grasps': {
    reference:
      'G. P. Bingham, K. Hughes, M. Mon-Williams, Exp. Brain Res. 184, 2008, 283–293 (abstract): two grasps end one after the other, for sight serves one target at a time',
    locator: 'http://eprints.whiterose.ac.uk/8607/',
    seen: 'read',
  },
  ours: { reference: 'Evenhand; no publication settles it', seen: 'read' },
} as const satisfies Readonly<Record<string, Source>>;

export type SourceId = keyof typeof sources;
