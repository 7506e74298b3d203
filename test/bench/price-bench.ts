import { readyProducts } from '../../core/build-up/ready-products';
import { priceJob } from '../../core/offer/price-job';
import { workOut } from '../../core/run/pipeline';
import type { WorkedOut } from '../../core/worked-out';
import { schoolJob } from './generated-jobs';
import { row, timed } from './print';

/** The Price station's work on a job of 120 walls: from nothing, and after the price of one product has changed. */
export async function priceBench(): Promise<void> {
  const worked = firstResult();
  row(
    '120 walls, priced from nothing',
    timed(3, () => priceJob(structuredClone(worked))),
  );
  let price = 10;
  const changed = () => {
    price++;
    const products = readyProducts
      .filter(({ id }) => id === 'fine-filler')
      .map((filler) => ({ ...filler, packs: filler.packs.map((pack) => ({ ...pack, price })) }));
    return priceJob({ ...worked, job: { ...worked.job, products } });
  };
  const { times, value } = timed(30, changed);
  row('120 walls, after one change of a price', { times });
  const { takeOff, programme, offer } = value;
  console.log(
    `    ${takeOff.needs.length} needs, ${programme.tasks.length} tasks, ${offer.lines.length} lines of the offer`,
  );
}

function firstResult(): WorkedOut {
  for (const worked of workOut(schoolJob(120))) if (worked) return worked;
  throw new Error('A job that is worked out has a first result.');
}
