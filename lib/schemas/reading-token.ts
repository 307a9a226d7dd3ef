/** Input of the commands about tokens that let a script send readings. */
import { z } from 'zod';
import { idOf } from './choice-field';
import { textUpTo } from './field-schemas';

export const createReadingTokenSchema = z.object({ storeId: idOf('store'), name: textUpTo(60) });

export const revokeReadingTokenSchema = z.object({ id: idOf('token') });
