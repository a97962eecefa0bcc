import type { JSX } from 'preact';
import { More } from './Entry.tsx';
import { NumberField, WordsField } from './fields.tsx';
import { PresetSwitch } from './Tools.tsx';

/** Units, name, and where the pad stands. */
export function StepPlace(): JSX.Element {
  return (
    <div class="form-fields">
      <PresetSwitch
        id="form-preset"
        label="Units"
        hint="For one unit alone, use the Units button of the bar."
      />
      <WordsField at={['name']} label="Name of this pad" what="the name of the pad" />
      <NumberField
        at={['site', 'waterTemperature']}
        label="Water temperature"
        hint="Colder water is thicker. A guess is fine."
      />
      <More title="Height and notes">
        <NumberField
          at={['site', 'altitude']}
          label="Height above the sea"
          hint="Thinner air leaves the pump less suction."
        />
        <NumberField
          at={['site', 'surfaceAbovePump']}
          label="Pool surface above the pump"
          hint="Negative where the pump stands higher than the water."
        />
        <WordsField at={['notes']} label="Notes" what="the notes" max={4000} />
      </More>
    </div>
  );
}
