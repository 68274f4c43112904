// A plain `npm install` would write a second lock file beside pnpm's. `npm start` and `npm test` set everything up.
const agent = process.env.npm_config_user_agent ?? "";
if (!agent.startsWith("pnpm/")) {
  process.stderr.write(
    "Use `npm start` or `npm test`: they install everything. (`npm install` alone is not used here.)\n",
  );
  process.exit(1);
}
