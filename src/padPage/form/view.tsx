import type { JSX } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { ownerPad } from '#pad/demos/demoOwner.ts';
import type { FieldRules } from '#pad/document/fieldRule.ts';
import { padModel } from '#pad/model/assemble.ts';
import { prepare } from '#pad/model/firstFit.ts';
import { padStore } from '#pad/store/padStore.ts';
import type { PadStore } from '#pad/store/store.ts';
import { Announce } from '#ui/figure/Announce.tsx';
import { guarded } from '#ui/loading/Guard.tsx';
import { createForm, type Form, FormProvider } from './form.ts';
import { NoticeBar, Start, type StartChoice } from './Start.tsx';
import { Step } from './Step.tsx';
import { type StepTexts, stepElement, steps } from './steps.ts';
import { Tools } from './Tools.tsx';

if (!import.meta.env.SSR) await prepare([() => padModel(ownerPad)]);

interface PadFormProps extends StepTexts {
  readonly starts: readonly StartChoice[];
  readonly rules: FieldRules;
  /** The link to the answers. */
  readonly answersHref: string;
  readonly store?: PadStore;
  /** Steps that stand open at first. */
  readonly open?: readonly string[];
}

/** The reader's pad as a form. */
function PadForm({ store = padStore, ...props }: PadFormProps): JSX.Element {
  const form = useMemo(() => createForm(store, props.rules, props.open), [store]);
  useEffect(() => bringToLife(form), [form]);
  return (
    <FormProvider value={form}>
      <div class="form needs-script" data-first-pad>
        <NoticeBar />
        <Tools answers={props.answersHref} />
        <Start starts={props.starts} />
        {steps.map(({ id }) => (
          <Step key={id} id={id} cautions={props.cautions} schemaHref={props.schemaHref} />
        ))}
        <Announce sentence={form.said} />
      </div>
    </FormProvider>
  );
}

export default guarded(PadForm, padStore);

/** How long the pad keeps still before it is looked at for problems [ms]. */
const judgeAfter = 400;

/** Reads what the browser kept, then follows keys, links to steps and every change of the pad. */
function bringToLife(form: Form): () => void {
  const { store } = form;
  const disconnect = store.connect();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = store.pad.subscribe(() => {
    clearTimeout(timer);
    timer = setTimeout(form.judge, judgeAfter);
  });
  const onKey = (event: KeyboardEvent) => undoByKey(form, event);
  const onHash = () => openNamedStep(form, location.hash);
  // A link pressed twice changes no hash the second time.
  const onClick = ({ target }: MouseEvent) => {
    const link =
      target instanceof Element ? target.closest<HTMLAnchorElement>('a[href^="#"]') : null;
    if (link !== null) openNamedStep(form, link.hash);
  };
  onHash();
  document.addEventListener('keydown', onKey);
  document.addEventListener('click', onClick);
  window.addEventListener('hashchange', onHash);
  return () => {
    clearTimeout(timer);
    stop();
    document.removeEventListener('keydown', onKey);
    document.removeEventListener('click', onClick);
    window.removeEventListener('hashchange', onHash);
    disconnect();
  };
}

/** Ctrl or Cmd with Z, with Shift and Z, or with Y. A box of many lines keeps its own undo. */
function undoByKey(form: Form, event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  if (event.target instanceof HTMLTextAreaElement) return;
  const key = event.key.toLowerCase();
  const redo = key === 'y' || (key === 'z' && event.shiftKey);
  if (!redo && key !== 'z') return;
  event.preventDefault();
  if (redo) form.redo();
  else form.undo();
}

/** A link to a step, from the answers or from elsewhere, opens it. */
function openNamedStep(form: Form, hash: string): void {
  const named = steps.find(({ id }) => hash === `#${stepElement(id)}`);
  if (named === undefined) return;
  const open = form.open.peek();
  if (!open.includes(named.id)) form.open.value = [...open, named.id];
  requestAnimationFrame(() => document.getElementById(stepElement(named.id))?.scrollIntoView());
}
