import type { AdviceQuestion, ZoneAdvised } from '../../core/run/zone-advice';

/** To the worker that looks for zone sizes; one question a worker, which ends with its answer. */
export type AdviceRequest = AdviceQuestion;

/** From it: now and then how many sizes it has laid out, then the answer. */
export type AdviceReply =
  { readonly considered: number } | { readonly advised: ZoneAdvised } | { readonly fault: string };
