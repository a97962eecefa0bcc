/** The steps of the form, in the order to take them. */
export const steps = [
  { id: 'place', title: 'Units and place', parts: [['site'], ['name']] },
  { id: 'pool', title: 'Pool', parts: [['pool']] },
  { id: 'pipes', title: 'Pipes and fittings', parts: [['plumbing']] },
  { id: 'pump', title: 'Pump', parts: [['pump']] },
  { id: 'readings', title: 'Readings', parts: [['readings'], ['instruments']] },
  { id: 'needs', title: 'Needs', parts: [['needs'], ['turnoverTarget']] },
  { id: 'limits', title: 'Limits and quiet hours', parts: [['limits'], ['quiet']] },
  { id: 'tariff', title: 'Price of electricity', parts: [['tariff']] },
  { id: 'keep', title: 'Keep it', parts: [] },
] as const;

export type StepId = (typeof steps)[number]['id'];

/** The id of a step's element, for links to it. */
export const stepElement = (id: StepId): string => `pad-step-${id}`;

/** Short warnings, worded once for the whole site, by where they stand in the form. */
export interface FormCautions {
  readonly readings: string;
  readonly suctionCovers: string;
  readonly manuals: string;
  readonly pump: string;
}

/** What the insides of the steps are told by the page. */
export interface StepTexts {
  readonly cautions: FormCautions;
  /** Where the definition of the pad file is published. */
  readonly schemaHref: string;
}
