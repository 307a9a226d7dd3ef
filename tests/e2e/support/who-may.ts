import type { Role } from '../../../lib/domain/people/roles';

/**
 * Who may what: every page, route and action of the app, by hand. doors.spec.ts fails when one is missing here, so that
 * nothing is added without somebody having said who it is for.
 */
export type Who = 'anyone' | Role;

export interface PageRule {
  who: Who;
  /** A query whose first value fills the address's [segment]. */
  sample?: string;
  /** What it answers to whoever may; 200 if left out. */
  answers?: number;
}

const ACCESSION = 'SELECT number FROM Accession LIMIT 1';
const CROP = 'SELECT cropId FROM Accession LIMIT 1';
const LOT = 'SELECT number FROM Lot LIMIT 1';
const PACKET = 'SELECT number FROM Packet LIMIT 1';
const STORE = 'SELECT id FROM Store LIMIT 1';
// The demo has no stock-take: what is not there answers so, once it is clear who asks.
const STOCK_TAKE = "SELECT 'nothing'";
const TEST = 'SELECT number FROM GerminationTest LIMIT 1';
const TRAY = 'SELECT number FROM Tray LIMIT 1';
const RUN = 'SELECT number FROM DryingRun LIMIT 1';
const EXPERIMENT = 'SELECT id FROM StorageExperiment LIMIT 1';
const REQUEST = "SELECT number FROM SharingRequest WHERE status = 'open' LIMIT 1";
const PERSON = 'SELECT id FROM User LIMIT 1';

export const PAGES: Record<string, PageRule> = {
  '/': { who: 'visitor' },
  '/bench': { who: 'volunteer' },
  '/collection': { who: 'visitor' },
  '/collection/accessions/[number]': { who: 'visitor', sample: ACCESSION },
  '/collection/accessions/[number]/edit': { who: 'steward', sample: ACCESSION },
  '/collection/accessions/[number]/ledger': { who: 'visitor', sample: ACCESSION },
  '/collection/accessions/new': { who: 'steward' },
  '/collection/crops': { who: 'visitor' },
  '/collection/crops/[id]': { who: 'visitor', sample: CROP },
  '/collection/crops/[id]/edit': { who: 'steward', sample: CROP },
  '/collection/crops/new': { who: 'steward' },
  '/collection/lots': { who: 'visitor' },
  '/collection/lots/[number]': { who: 'visitor', sample: LOT },
  '/collection/lots/[number]/edit': { who: 'volunteer', sample: LOT },
  '/collection/lots/[number]/ledger': { who: 'visitor', sample: LOT },
  '/collection/lots/[number]/moisture': { who: 'visitor', sample: LOT },
  '/collection/lots/[number]/moisture/new': { who: 'volunteer', sample: LOT },
  '/collection/lots/log': { who: 'volunteer' },
  '/germination': { who: 'visitor' },
  '/germination/[number]': { who: 'visitor', sample: TEST },
  '/germination/[number]/certificate': { who: 'visitor', sample: TEST },
  '/germination/[number]/correct': { who: 'volunteer', sample: TEST },
  '/germination/[number]/tray': { who: 'visitor', sample: TRAY },
  '/germination/[number]/tray/count': { who: 'volunteer', sample: TRAY },
  '/germination/calendar': { who: 'visitor' },
  '/germination/labels': { who: 'volunteer' },
  '/germination/new': { who: 'volunteer' },
  '/germination/plan': { who: 'volunteer' },
  // Without trays or lots in the address there is nothing to show: back to where they are chosen.
  '/germination/plan/done': { who: 'volunteer', answers: 307 },
  '/germination/plan/set': { who: 'volunteer', answers: 307 },
  '/germination/report': { who: 'visitor' },
  '/germination/viability': { who: 'visitor' },
  // The demo has none: what is not there answers so, once it is clear who asks.
  '/germination/viability/[number]': { who: 'visitor', sample: "SELECT 'nothing'", answers: 404 },
  '/germination/viability/[number]/correct': { who: 'volunteer', sample: "SELECT 'nothing'", answers: 404 },
  '/germination/viability/new': { who: 'volunteer' },
  '/import': { who: 'steward' },
  '/import/[id]': { who: 'steward', sample: "SELECT 'nothing'", answers: 404 },
  '/new-password': { who: 'anyone' },
  '/l/[number]': { who: 'visitor', sample: LOT, answers: 307 },
  '/p/[number]': { who: 'visitor', sample: PACKET, answers: 307 },
  '/phone': { who: 'anyone' },
  '/t/[number]': { who: 'visitor', sample: TEST, answers: 307 },
  '/reference': { who: 'visitor' },
  '/reference/constants/new': { who: 'steward' },
  '/reference/flowers-to-bag': { who: 'visitor' },
  '/reference/germination-interval': { who: 'visitor' },
  '/reference/moisture-and-drying': { who: 'visitor' },
  '/reference/seed-weight': { who: 'visitor' },
  '/reference/germination-over-days': { who: 'visitor' },
  '/reference/hard-and-dormant-seed': { who: 'visitor' },
  '/reference/keeping-variety': { who: 'visitor' },
  '/reference/seeds-to-sow': { who: 'visitor' },
  '/reference/seeds-to-test': { who: 'visitor' },
  '/reference/storage-life': { who: 'visitor' },
  '/reference/storage-experiments': { who: 'visitor' },
  '/reference/storage-experiments/[id]': { who: 'visitor', sample: EXPERIMENT },
  '/reference/storage-experiments/[id]/edit': { who: 'steward', sample: EXPERIMENT },
  '/reference/storage-experiments/new': { who: 'steward' },
  '/regrow': { who: 'visitor' },
  '/regrow/[number]': { who: 'visitor', sample: ACCESSION },
  '/settings': { who: 'visitor' },
  '/settings/account': { who: 'visitor' },
  '/settings/people': { who: 'steward' },
  '/settings/people/[id]': { who: 'steward', sample: PERSON },
  '/sign-in': { who: 'anyone' },
  '/stores': { who: 'visitor' },
  '/stores/[id]': { who: 'visitor', sample: STORE },
  '/stores/[id]/climate': { who: 'visitor', sample: STORE },
  '/stores/[id]/edit': { who: 'steward', sample: STORE },
  '/stores/[id]/move': { who: 'volunteer', sample: STORE },
  '/stores/drying': { who: 'visitor' },
  '/stores/drying/[number]': { who: 'visitor', sample: RUN },
  '/stores/drying/[number]/correct': { who: 'volunteer', sample: RUN },
  '/stores/drying/new': { who: 'volunteer' },
  '/stores/ledger': { who: 'visitor' },
  '/stores/stock-takes': { who: 'visitor' },
  '/stores/stock-takes/[number]': { who: 'visitor', sample: STOCK_TAKE, answers: 404 },
  '/stores/stock-takes/[number]/review': { who: 'volunteer', sample: STOCK_TAKE, answers: 404 },
  '/stores/labels': { who: 'volunteer' },
  '/stores/labels/formats': { who: 'steward' },
  '/stores/labels/formats/[id]': { who: 'steward', sample: "SELECT 'nothing'", answers: 404 },
  '/stores/labels/formats/new': { who: 'steward' },
  '/stores/scan': { who: 'visitor' },
  '/stores/[id]/readings': { who: 'volunteer', sample: STORE },
  // Nothing has been imported in the demo.
  '/stores/[id]/readings/[importId]': { who: 'volunteer', sample: STORE, answers: 404 },
  '/stores/new': { who: 'steward' },
  '/stores/sharing': { who: 'visitor' },
  '/stores/sharing/[number]': { who: 'visitor', sample: REQUEST },
  '/stores/sharing/[number]/choose': { who: 'volunteer', sample: REQUEST },
  '/stores/sharing/[number]/edit': { who: 'volunteer', sample: REQUEST },
  '/stores/sharing/[number]/pack-list': { who: 'volunteer', sample: REQUEST },
  '/stores/sharing/[number]/send': { who: 'steward', sample: REQUEST },
  '/stores/sharing/new': { who: 'volunteer' },
  '/stores/packets': { who: 'visitor' },
  '/stores/packets/[number]': { who: 'visitor', sample: PACKET },
  '/stores/packets/[number]/desiccant': { who: 'volunteer', sample: PACKET },
  '/stores/packets/[number]/merge': { who: 'volunteer', sample: PACKET },
  '/stores/packets/[number]/move': { who: 'volunteer', sample: PACKET },
  '/stores/packets/[number]/purpose': { who: 'volunteer', sample: PACKET },
  '/stores/packets/[number]/repack': { who: 'volunteer', sample: PACKET },
  '/stores/packets/[number]/seal': { who: 'volunteer', sample: PACKET },
  '/stores/packets/[number]/split': { who: 'volunteer', sample: PACKET },
  '/stores/packets/[number]/take': { who: 'volunteer', sample: PACKET },
  // Open until there is an account, then gone.
  '/welcome': { who: 'anyone', answers: 404 },
};

export const ROUTES: Record<string, PageRule> = {
  'GET /api/accessions': { who: 'visitor' },
  // No certificate of its own where its own door does not stand before it.
  'GET /api/authority': { who: 'anyone', answers: 404 },
  'GET /api/bench': { who: 'volunteer' },
  'POST /api/bench/entries': { who: 'volunteer', answers: 415 },
  'POST /api/bench/photos': { who: 'volunteer', answers: 415 },
  'GET /api/bench/photos/[id]': { who: 'visitor', sample: "SELECT 'nothing'", answers: 404 },
  'GET /api/germination-report': { who: 'visitor' },
  // The secret in the address decides.
  'GET /api/calendar/[secret]': { who: 'anyone', sample: "SELECT 'nothing'", answers: 404 },
  'GET /api/health': { who: 'anyone' },
  'GET /api/imports/[id]': { who: 'steward', sample: "SELECT 'nothing'" },
  'GET /api/ledger': { who: 'visitor' },
  'GET /api/labels': { who: 'volunteer', answers: 400 },
  'GET /api/ready': { who: 'anyone' },
  // The token decides, whoever is signed in.
  'GET /api/reading-imports/[id]': { who: 'volunteer', sample: "SELECT 'nothing'" },
  'POST /api/readings': { who: 'anyone', answers: 401 },
  // The service worker, the same for everybody.
  'GET /worker/[path]': { who: 'anyone', sample: "SELECT 'sw.js'" },
};

export interface ActionRule {
  who: Who;
  /** What the action takes; most take what the form showed before, and the form. */
  takes?: 'state and form' | 'form' | 'nothing';
}

export const ACTIONS: Record<string, ActionRule> = {
  'collection/accessions#addAccession': { who: 'steward' },
  'collection/accessions#changeAccession': { who: 'steward' },
  'collection/crops#addCrop': { who: 'steward' },
  'collection/crops#changeCrop': { who: 'steward' },
  'collection/crops#takeOverLearnt': { who: 'steward' },
  'collection/lots/[number]/moisture#recordMoisture': { who: 'volunteer' },
  'collection/lots#changeLot': { who: 'volunteer' },
  'collection/lots#logLot': { who: 'volunteer' },
  'collection/lots#takeBack': { who: 'volunteer' },
  'germination#recordTest': { who: 'volunteer' },
  'germination/[number]#close': { who: 'volunteer' },
  'germination/[number]#giveUp': { who: 'volunteer' },
  'germination/[number]#reopen': { who: 'volunteer' },
  'germination/[number]#setGroup': { who: 'volunteer' },
  'germination/[number]#settle': { who: 'volunteer' },
  'germination/[number]#writeCounts': { who: 'volunteer' },
  'germination/plan#setTrays': { who: 'volunteer' },
  'germination/viability#recordViability': { who: 'volunteer' },
  'germination/calendar#makeCalendar': { who: 'volunteer' },
  'germination/calendar#revokeCalendar': { who: 'volunteer' },
  'import#chooseFile': { who: 'steward' },
  'import#importFile': { who: 'steward' },
  'new-password#setPassword': { who: 'anyone' },
  'reference#addConstants': { who: 'steward' },
  'reference/storage-experiments#addExperiment': { who: 'steward' },
  'reference/storage-experiments#changeExperiment': { who: 'steward' },
  'reference/storage-experiments#removeExperiment': { who: 'steward' },
  'reference/storage-experiments#saveConstants': { who: 'steward' },
  'regrow#decide': { who: 'steward' },
  'settings#chooseTheme': { who: 'anyone', takes: 'form' },
  'settings#saveBank': { who: 'steward' },
  'settings/account#changePassword': { who: 'visitor' },
  'settings/account#endSession': { who: 'visitor' },
  'settings/people#addPerson': { who: 'steward' },
  'settings/people#blockPerson': { who: 'steward' },
  'settings/people#changeRole': { who: 'steward' },
  'settings/people#endSessions': { who: 'steward' },
  'settings/people#makePasswordCode': { who: 'steward' },
  'settings/people#unblockPerson': { who: 'steward' },
  'sign-in#signIn': { who: 'anyone' },
  'sign-in#signOut': { who: 'anyone', takes: 'nothing' },
  'stores/labels/formats#addFormat': { who: 'steward' },
  'stores/labels/formats#changeFormat': { who: 'steward' },
  'stores/labels/formats#removeFormat': { who: 'steward' },
  'stores/drying#correctWeighing': { who: 'volunteer' },
  'stores/drying#endRun': { who: 'volunteer' },
  'stores/drying#startRun': { who: 'volunteer' },
  'stores/drying#weighRun': { who: 'volunteer' },
  'stores/[id]/readings#chooseLoggerFile': { who: 'volunteer' },
  'stores/[id]/readings#importLoggerFile': { who: 'volunteer' },
  'stores/[id]/readings#makeToken': { who: 'steward' },
  'stores/[id]/readings#revokeToken': { who: 'steward' },
  'stores/[id]/readings#takeImportBack': { who: 'steward' },
  'stores#addStore': { who: 'steward' },
  'stores#changeStore': { who: 'steward' },
  'stores#standElsewhere': { who: 'volunteer' },
  'stores/sharing#addLine': { who: 'volunteer' },
  'stores/sharing#changeLines': { who: 'volunteer' },
  'stores/sharing#changeRequest': { who: 'volunteer' },
  'stores/sharing#openRequest': { who: 'volunteer' },
  'stores/sharing#sendSeed': { who: 'steward' },
  'stores/sharing#turnDown': { who: 'steward' },
  'stores/packets#careFor': { who: 'volunteer' },
  'stores/packets#changePurpose': { who: 'volunteer' },
  'stores/packets#pourTogether': { who: 'volunteer' },
  'stores/packets#putElsewhere': { who: 'volunteer' },
  'stores/packets#repack': { who: 'volunteer' },
  'stores/packets#splitOff': { who: 'volunteer' },
  'stores/packets#takeSeed': { who: 'volunteer' },
  'stores/stock-takes#closeCounting': { who: 'steward' },
  'stores/stock-takes#enterPacket': { who: 'volunteer' },
  'stores/stock-takes#giveUp': { who: 'volunteer' },
  'stores/stock-takes#startCounting': { who: 'volunteer' },
  'welcome#openBank': { who: 'anyone' },
};
