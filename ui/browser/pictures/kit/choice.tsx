// One thing chosen out of several, above a picture.

export interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly words: string }[];
  readonly onChoose: (value: string) => void;
}

export function Choice({ label, value, options, onChoose }: ChoiceProps) {
  return (
    <div class="picture-choices">
      <label>
        {label}{' '}
        <select value={value} onChange={({ currentTarget }) => onChoose(currentTarget.value)}>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.words}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}
