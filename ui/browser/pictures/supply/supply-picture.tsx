// Supply against demand in the page: a product is chosen, its weeks are drawn.

import { useState } from 'preact/hooks';
import { workbook } from '../../store/workbook.ts';
import { Choice } from '../kit/choice.tsx';
import { ColumnsPicture } from '../kit/columns-picture.tsx';
import { productsOf, supplyAgainstDemand } from './supply.ts';

export function SupplyPicture() {
  const book = workbook();
  const products = productsOf(book);
  const [chosen, choose] = useState('');
  const product = products.find(({ name }) => name === chosen) ?? products[0];
  const model = product === undefined ? undefined : supplyAgainstDemand(book, product);
  if (model === undefined || product === undefined) {
    return <p class="no-picture">No product has a week of supply yet: enter plantings and products first.</p>;
  }
  const names = products.map(({ name }) => ({ value: name, words: name }));
  return (
    <ColumnsPicture
      model={model}
      height={240}
      choices={<Choice label="Product" value={product.name} options={names} onChoose={choose} />}
    />
  );
}
