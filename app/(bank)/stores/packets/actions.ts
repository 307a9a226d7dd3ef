'use server';

import type { FormState } from '@/app/_actions/form-state';
import { runEditForm } from '@/app/_actions/run-edit-form';
import { runForm } from '@/app/_actions/run-form';
import { packetPath } from '@/app/_format/store-path';
import { changePacketRole } from '@/lib/server/commands/change-packet-role';
import { mergePackets } from '@/lib/server/commands/merge-packets';
import { movePacket } from '@/lib/server/commands/move-packet';
import { recordPacketCare } from '@/lib/server/commands/record-packet-care';
import { repackPacket } from '@/lib/server/commands/repack-packet';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';

const toPacket = ({ number }: { number: string }) => packetPath(number);

export async function takeSeed(state: FormState, data: FormData): Promise<FormState> {
  return runForm(takeSeedOut, state, data, toPacket);
}

export async function putElsewhere(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(movePacket, state, data, toPacket);
}

export async function splitOff(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(splitPacket, state, data, toPacket);
}

export async function repack(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(repackPacket, state, data, toPacket);
}

export async function pourTogether(state: FormState, data: FormData): Promise<FormState> {
  return runEditForm(mergePackets, state, data, toPacket);
}

export async function careFor(state: FormState, data: FormData): Promise<FormState> {
  return runForm(recordPacketCare, state, data, toPacket);
}

export async function changePurpose(state: FormState, data: FormData): Promise<FormState> {
  return runForm(changePacketRole, state, data, toPacket);
}
