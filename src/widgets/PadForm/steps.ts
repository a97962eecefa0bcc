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
