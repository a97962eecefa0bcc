import type { EndKind, FittingKind } from '#core/hydraulics/fittings.ts';

type Words = readonly [RegExp, FittingKind | EndKind];

/** How handbooks call each fitting. The first line that matches counts. */
export const fittingWords: readonly Words[] = [
  [/bend.*r\/d *= *1\.5|long.?radius/, 'elbow90Long'],
  [/bend.*r\/d *= *3\b/, 'bend90Wide'],
  [/street.*45|45.*street/, 'streetElbow45'],
  [/street/, 'streetElbow90'],
  [/45 ?(°|deg)|45 ?(elbow|ell\b)|(elbow|ell) ?45/, 'elbow45'],
  [/return bend/, 'returnBend'],
  [/90 ?(°|deg\S*)? ?(standard |std )?(elbow|ell\b)|(elbow|ell) ?90|^elbows?$/, 'elbow90'],
  [/three.?way.*branch/, 'threeWayValveBranch'],
  [/three.?way/, 'threeWayValveStraight'],
  [/^(?!.*branch).*(tee.*(run|straight|line|through)|(run|straight|through).*tee)/, 'teeRun'],
  [/tee.*branch|branch.*tee/, 'teeBranch'],
  [/gate valve/, 'gateValve'],
  [/ball valve/, 'ballValve'],
  [/butterfly valve/, 'butterflyValve'],
  [/globe valve/, 'globeValve'],
  [/angle valve(?!.*55)/, 'angleValve'],
  [/swing check.*clearway|clearway/, 'swingCheckValveClearway'],
  [/swing check/, 'swingCheckValve'],
  [/(square|sharp).*(inlet|entrance)/, 'squareInlet'],
  [/bell.?mouth/, 'bellMouthInlet'],
  [/(?<!slightly )rounded(?!.*r\/d)/, 'roundedInlet'],
  [/project/, 'projectingInlet'],
  [/exit|(outlet|discharge) into/, 'exit'],
];
