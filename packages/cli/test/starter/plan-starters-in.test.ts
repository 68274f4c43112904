import { planStarters } from "./plan-starters.js";

planStarters("in");
