import { createContext } from 'svelte';
import { ownKindsOf } from '../../core/job/fitting-kinds';
import type { HungKind } from '../../core/job/hung-schema';
import { ownHungKindsOf } from '../../core/job/own-hung-kinds';
import type { OwnKind } from '../../core/job/schema';
import {
  addHungKind,
  faultOfNewHungKind,
  setHungKindFields,
  takeOutHungKind,
} from '../job/changes/hung-kinds';
import { addKind, faultOfNewKind, setKindFields, takeOutKind } from '../job/changes/kinds';
import type { KindChanges, KindDesk } from './kind-desk.svelte';

export const fittingKindChanges: KindChanges<OwnKind> = {
  ownOf: ownKindsOf,
  faultOfNew: faultOfNewKind,
  make: (name) => addKind(name),
  set: setKindFields,
  takeOut: takeOutKind,
};

export const hungKindChanges: KindChanges<HungKind> = {
  ownOf: ownHungKindsOf,
  faultOfNew: faultOfNewHungKind,
  make: addHungKind,
  set: setHungKindFields,
  takeOut: takeOutHungKind,
};

const [kindsOf, setKinds] = createContext<KindDesk<OwnKind>>();
const [hungKindsOf, setHungKinds] = createContext<KindDesk<HungKind>>();
export { hungKindsOf, kindsOf, setHungKinds, setKinds };
