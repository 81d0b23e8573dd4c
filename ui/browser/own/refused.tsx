// The sentence of a refusal, under the field it is about.

export function Refused({ why }: { readonly why: string | undefined }) {
  return why === undefined ? null : (
    <p class="refusal" role="alert">
      {why}
    </p>
  );
}
