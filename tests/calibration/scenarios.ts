/** What is simulated: collections as the model believes them to be, and collections that break its beliefs. */
import { DOUBTFUL_RATE_PRIOR, INITIAL_PRIOR, OWN_RATE_PRIOR } from '../../lib/domain/longevity/priors';

interface Normal {
  mean: number;
  sd: number;
}

export interface Scenario {
  name: string;
  /** what the model is told to believe of the rate of ageing */
  believedLogRate: Normal;
  /** how the lots really are */
  truth: { initial: Normal; logRate: Normal /** rho within a dish */; correlation: number };
  /** how the model learns of uneven dishes: it is told, it follows the product's rule, or it takes them for even */
  correlation: 'told' | 'by rule' | 'ignored';
  /** the model's beliefs hold, so that its bands must cover */
  mustHold: boolean;
}

const asBelieved = (logRate: Normal, correlation = 0) => ({ initial: INITIAL_PRIOR, logRate, correlation });
const twice = ({ mean, sd }: Normal): Normal => ({ mean: mean + Math.log(2), sd });

export const SCENARIOS: readonly Scenario[] = [
  {
    name: 'own constants, as believed',
    believedLogRate: OWN_RATE_PRIOR,
    truth: asBelieved(OWN_RATE_PRIOR),
    correlation: 'by rule',
    mustHold: true,
  },
  {
    name: 'borrowed constants, as believed',
    believedLogRate: DOUBTFUL_RATE_PRIOR,
    truth: asBelieved(DOUBTFUL_RATE_PRIOR),
    correlation: 'by rule',
    mustHold: true,
  },
  {
    name: 'uneven dishes (rho 0.03), known',
    believedLogRate: OWN_RATE_PRIOR,
    truth: asBelieved(OWN_RATE_PRIOR, 0.03),
    correlation: 'told',
    mustHold: true,
  },
  {
    name: 'very uneven dishes (rho 0.1), known',
    believedLogRate: DOUBTFUL_RATE_PRIOR,
    truth: asBelieved(DOUBTFUL_RATE_PRIOR, 0.1),
    correlation: 'told',
    mustHold: true,
  },
  {
    name: 'uneven dishes (rho 0.03), noticed only by the rule',
    believedLogRate: OWN_RATE_PRIOR,
    truth: asBelieved(OWN_RATE_PRIOR, 0.03),
    correlation: 'by rule',
    mustHold: false,
  },
  {
    name: 'very uneven dishes (rho 0.1), noticed only by the rule',
    believedLogRate: OWN_RATE_PRIOR,
    truth: asBelieved(OWN_RATE_PRIOR, 0.1),
    correlation: 'by rule',
    mustHold: false,
  },
  {
    name: 'very uneven dishes (rho 0.1), taken for even',
    believedLogRate: OWN_RATE_PRIOR,
    truth: asBelieved(OWN_RATE_PRIOR, 0.1),
    correlation: 'ignored',
    mustHold: false,
  },
  {
    name: 'ageing twice as fast as believed, own constants',
    believedLogRate: OWN_RATE_PRIOR,
    truth: asBelieved(twice(OWN_RATE_PRIOR)),
    correlation: 'by rule',
    mustHold: false,
  },
  {
    name: 'ageing twice as fast as believed, borrowed constants',
    believedLogRate: DOUBTFUL_RATE_PRIOR,
    truth: asBelieved(twice(DOUBTFUL_RATE_PRIOR)),
    correlation: 'by rule',
    mustHold: false,
  },
];
