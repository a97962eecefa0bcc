/** A document that figures on this site are taken from. */
export interface Source {
  /** Who issued it: a standards body, an agency or the authors. */
  by: string;
  title: string;
  year?: number;
  /** Part of the document that is used. */
  part?: string;
  /** Where it can be read, if it can. */
  link?: string;
  /** How we know it, where that matters. */
  note?: string;
}

const fromMemory = 'Known from memory; the text could not be seen.';

/** Every source the site cites, by the short name that lessons and pages use. */
export const sources = {
  'iapws-sr6': {
    by: 'International Association for the Properties of Water and Steam',
    title: 'Revised Supplementary Release on Properties of Liquid Water at 0.1 MPa (SR6-08)',
    year: 2011,
  },
  'iapws-if97': {
    by: 'International Association for the Properties of Water and Steam',
    title: 'Industrial Formulation for the Thermodynamic Properties of Water and Steam (R7-97)',
    year: 2012,
    part: 'region 4, saturation pressure',
  },
  'astm-d1785': {
    by: 'ASTM International',
    title: 'D1785, PVC plastic pipe, Schedules 40, 80 and 120',
    part: 'outside diameters and least walls',
  },
  'en-iso-1452': {
    by: 'CEN and ISO',
    title: 'EN ISO 1452-2, PVC-U piping systems for water supply: pipes',
    note: 'Walls up to 90 mm were read in DIN 8062; that this standard repeats them, and the walls at 110 mm, are from memory.',
  },
  'darcy-colebrook': {
    by: 'C. F. Colebrook',
    title:
      'Turbulent flow in pipes, with particular reference to the transition region between the smooth and rough pipe laws',
    year: 1939,
    part: 'Journal of the Institution of Civil Engineers 11(4)',
    link: 'https://doi.org/10.1680/ijoti.1939.13150',
  },
  'weisbach-1845': {
    by: 'J. Weisbach',
    title: 'Lehrbuch der Ingenieur- und Maschinen-Mechanik',
    year: 1845,
    part: 'the law of pipe friction',
    note: fromMemory,
  },
  'cross-1936': {
    by: 'H. Cross',
    title: 'Analysis of flow in networks of conduits or conductors',
    year: 1936,
    part: 'University of Illinois Engineering Experiment Station, Bulletin 286: one head, flows that add up',
    note: fromMemory,
  },
  'moody-1944': {
    by: 'L. F. Moody',
    title: 'Friction factors for pipe flow',
    year: 1944,
    part: 'Transactions of the ASME 66; the chart, and the roughness of walls',
    note: fromMemory,
  },
  'mckeon-2004': {
    by: 'B. J. McKeon and others',
    title: 'Friction factors for smooth pipe flow',
    year: 2004,
    part: 'Journal of Fluid Mechanics 511',
    link: 'https://doi.org/10.1017/S0022112004009796',
  },
  'hazen-williams': {
    by: 'G. S. Williams and A. Hazen',
    title: 'Hydraulic tables',
    year: 1905,
    note: fromMemory,
  },
  'crane-tp410': {
    by: 'Crane Co.',
    title: 'Technical Paper 410, Flow of fluids through valves, fittings and pipe',
    year: 2009,
    part: 'resistance coefficients',
    note: 'Multipliers of elbows, tees and return bends are from memory.',
  },
  'affinity-hi': {
    by: 'Hydraulic Institute',
    title: 'Engineering data book',
    part: 'water properties, affinity examples, pipe tables',
  },
  'iso-2533': { by: 'ISO', title: 'ISO 2533, Standard atmosphere', year: 1975 },
  'iso-17769': {
    by: 'ISO',
    title: 'ISO 17769-1, Liquid pumps and installation: general terms and definitions',
    year: 2012,
    part: 'net positive suction head',
    note: fromMemory,
  },
  'hi-9-6-1': {
    by: 'Hydraulic Institute',
    title: 'ANSI/HI 9.6.1, Rotodynamic pumps: guideline for NPSH margin',
    part: 'NPSH required at 3 % loss of head, and the idea of a margin',
    note: fromMemory,
  },
  'gage-bidwell': {
    by: 'Gage and Bidwell',
    title: 'The law of dilution in a recirculated pool',
    year: 1926,
    note: 'Read only as the 2021 paper by Simmonds and others reports it; the title is in our words.',
  },
  'simmonds-2021': {
    by: 'L. P. Simmonds and others',
    title:
      'Revisiting the Gage–Bidwell Law of Dilution in Relation to the Effectiveness of Swimming Pool Filtration and the Risk to Swimming Pool Users from Cryptosporidium',
    year: 2021,
    part: 'Water 13(17), 2350',
    link: 'https://doi.org/10.3390/w13172350',
  },
  'cfr-431-465': {
    by: 'U.S. Department of Energy',
    title: '10 CFR 431.465, energy conservation standards for dedicated-purpose pool pumps',
    part: 'paragraphs (f) and (h), pumps made from July 19, 2021',
    link: 'https://www.ecfr.gov/current/title-10/section-431.465',
  },
  'cfr-431-test': {
    by: 'U.S. Department of Energy',
    title: '10 CFR 431 Subpart Y Appendix C, test procedure for dedicated-purpose pool pumps',
    note: fromMemory,
  },
  'cfr-1450': {
    by: 'U.S. Consumer Product Safety Commission',
    title: '16 CFR 1450, Virginia Graeme Baker Pool and Spa Safety Act regulations',
    part: 'the rating of suction outlet covers, after ANSI/APSP/ICC-16',
    link: 'https://www.ecfr.gov/current/title-16/part-1450',
  },
  'apsp-7': {
    by: 'ANSI, APSP and ICC',
    title: 'ANSI/APSP/ICC-7, suction entrapment avoidance in pools and spas',
    part: 'the system: flow with one cover blocked, second protection',
    note: fromMemory,
  },
  'apsp-15': {
    by: 'ANSI, APSP and ICC',
    title: 'ANSI/APSP/ICC-15, residential swimming pool and spa energy efficiency',
    part: '6 ft/s in suction pipe, 8 ft/s in return pipe',
    note: 'Read second-hand, in pages that quote it.',
  },
  'california-energy': {
    by: 'California Energy Commission',
    title: 'Building Energy Efficiency Standards, section 150.0(p)',
    note: 'The two velocities are from memory; the filtering flow was read second-hand.',
  },
  'california-title-20': {
    by: 'California Energy Commission',
    title: 'Title 20, Appliance Efficiency Regulations, section 1605.3(g)(5)',
    part: 'default speed and override of pool pumps',
    note: 'Read second-hand, in pages that quote it.',
  },
  mahc: {
    by: 'U.S. Centers for Disease Control and Prevention',
    title: 'Model Aquatic Health Code',
    part: 'backwash of sand filters',
    note: 'Read second-hand, in pages that quote it; a state code that prints the same rate was read in its text (Utah R392-302-23).',
  },
  'nevada-444': {
    by: 'State of Nevada',
    title: 'Administrative Code 444.160, public bathing places',
    part: 'pipe velocities: 6 ft/s for suction, 10 ft/s for discharge',
  },
  'illinois-906': {
    by: 'State of Illinois',
    title: '77 Administrative Code 906, mounds for private sewage disposal',
    part: 'Appendix A, Exhibit I: friction loss in plastic pipe',
    note: 'A code for sewage mounds; its table is for water in the same pipe.',
  },
  'nist-sp811': {
    by: 'National Institute of Standards and Technology',
    title: 'Special Publication 811, Guide for the use of the International System of Units',
    year: 2008,
    part: 'appendix B, conversion factors',
    link: 'https://doi.org/10.6028/NIST.SP.811e2008',
  },
  'cfr-431-485': {
    by: 'U.S. Department of Energy',
    title: '10 CFR 431.485, energy conservation standards for dedicated-purpose pool pump motors',
    year: 2023,
    part: 'classes by total horsepower, dates, settings of freeze protection',
    link: 'https://www.ecfr.gov/current/title-10/section-431.485',
    note: 'That total horsepower is the nominal one times the service factor is from memory.',
  },
  'iec-60050-131': {
    by: 'International Electrotechnical Commission',
    title: 'IEC 60050-131, International electrotechnical vocabulary: circuit theory',
    part: 'active, reactive and apparent power, power factor',
    note: fromMemory,
  },
  'asme-gauges': {
    by: 'ASME',
    title: 'B40.100, Pressure gauges and gauge attachments',
    part: 'accuracy grades',
    note: fromMemory,
  },
  'reynolds-1883': {
    by: 'O. Reynolds',
    title:
      'An experimental investigation of the circumstances which determine whether the motion of water shall be direct or sinuous',
    year: 1883,
    part: 'Philosophical Transactions of the Royal Society 174',
    link: 'https://doi.org/10.1098/rstl.1883.0029',
    note: fromMemory,
  },
  gum: {
    by: 'Joint Committee for Guides in Metrology',
    title: 'JCGM 100, Guide to the expression of uncertainty in measurement',
    year: 2008,
    note: fromMemory,
  },
  'dantzig-1963': {
    by: 'G. B. Dantzig',
    title: 'Linear programming and extensions',
    year: 1963,
    note: fromMemory,
  },
  'common-practice': {
    by: 'Common practice',
    title: 'Said and done in the trade; no published source',
  },
} as const satisfies Record<string, Source>;

/** Short name of a source. */
export type SourceId = keyof typeof sources;

/** Every short name, for checks of front matter. */
export const sourceIds = Object.keys(sources) as SourceId[];

/** The source in one line: who, what, when, which part. */
export function citation(id: SourceId): string {
  const { by, title, year, part }: Source = sources[id];
  const when = year === undefined ? '' : ` (${year})`;
  const where = part === undefined ? '' : `: ${part}`;
  return `${by}, ${title}${when}${where}.`;
}
