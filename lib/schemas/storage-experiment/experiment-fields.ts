import type { ColumnField } from '../../domain/spreadsheet/guess-columns';

/** Columns of a storage experiment's table, with the headings that people give them. */
export const EXPERIMENT_FIELDS = [
  {
    key: 'lot',
    label: 'Lot',
    required: false,
    kind: 'text',
    synonyms: [
      ...['Lot number', 'Lot no', 'Seed lot', 'Batch', 'Accession', 'Variety', 'Line', 'Sample'],
      ...['Los', 'Partie', 'Sorte', 'Herkunft', 'Variété', 'Lote', 'Variedad'],
    ],
  },
  {
    key: 'moisturePercent',
    label: 'Moisture',
    required: false,
    kind: 'percent',
    synonyms: [
      ...['Moisture content', 'Moisture %', 'MC', 'Seed moisture', 'Water content', 'm.c.'],
      ...['Feuchte', 'Feuchtigkeit', 'Wassergehalt', 'Samenfeuchte', 'Humidité', 'Teneur en eau', 'Humedad'],
    ],
  },
  {
    key: 'temperatureC',
    label: 'Temperature',
    required: false,
    kind: 'number',
    synonyms: [
      ...['Temperature C', 'Temp', 'Temp C', 'Degrees C', 'Storage temperature', '°C', 'T'],
      ...['Temperatur', 'Lagertemperatur', 'Température', 'Temperatura'],
    ],
  },
  {
    key: 'days',
    label: 'Days',
    required: true,
    kind: 'number',
    synonyms: [
      ...['Days in store', 'Days stored', 'Storage days', 'Day', 'Time in days', 'Storage time days', 'Time', 'd'],
      ...['Tage', 'Lagertage', 'Jours', 'Días'],
    ],
  },
  {
    key: 'sown',
    label: 'Sown',
    required: true,
    kind: 'seeds',
    synonyms: [
      ...['Seeds', 'Seeds sown', 'Seeds set', 'Seeds tested', 'Number of seeds', 'Total', 'n', 'N'],
      ...['Samen', 'Ausgelegt', 'Graines', 'Semées', 'Semillas', 'Sembradas'],
    ],
  },
  {
    key: 'germinated',
    label: 'Germinated',
    required: true,
    kind: 'seeds',
    synonyms: [
      ...['Seeds germinated', 'Germinated seeds', 'Normal', 'Normal seedlings', 'Alive', 'Viable', 'Sprouted', 'Grew'],
      ...['Gekeimt', 'Keimlinge', 'Germées', 'Germinadas'],
    ],
  },
] as const satisfies readonly ColumnField[];
