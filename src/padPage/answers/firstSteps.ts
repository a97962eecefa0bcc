import { ownerPad } from '#pad/demos/demoOwner.ts';
import { padModel } from '#pad/model/assemble.ts';
import { rungsOf } from './figures.ts';
import { leastSpecificEnergySpeed, sceneOf } from './scene.ts';

const sceneAnd = (ask: (scene: NonNullable<ReturnType<typeof sceneOf>>) => unknown) => () => {
  const scene = sceneOf(ownerPad);
  return scene && ask(scene);
};

/** What the first picture of the answers asks for, in steps that each are short. */
export const firstSteps: readonly (() => unknown)[] = [
  () => padModel(ownerPad),
  () => padModel(ownerPad).running,
  () => padModel(ownerPad).limits,
  () => padModel(ownerPad).fit?.bandAt(1),
  () => sceneOf(ownerPad),
  sceneAnd(rungsOf),
  sceneAnd(leastSpecificEnergySpeed),
];
