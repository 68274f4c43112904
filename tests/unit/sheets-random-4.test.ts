import { randomSheets } from "../reference/sheets/random-suite.js";
import { ROOT } from "./repository.js";

randomSheets(`${ROOT}/examples/market-garden/harvest.knife.yaml`, 75, 100);
