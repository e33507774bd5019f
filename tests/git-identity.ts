/** Who commits in tests, and that nothing of the machine's own settings of git may change how one comes out. */
export const gitIdentity = {
  GIT_CONFIG_GLOBAL: "/dev/null",
  GIT_CONFIG_NOSYSTEM: "1",
  GIT_AUTHOR_NAME: "Test",
  GIT_AUTHOR_EMAIL: "test@plumbmark.example",
  GIT_COMMITTER_NAME: "Test",
  GIT_COMMITTER_EMAIL: "test@plumbmark.example",
};
