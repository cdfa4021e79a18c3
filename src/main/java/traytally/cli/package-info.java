/**
 * The command line: one class a command, wiring, nothing decided here.
 *
 * <p>In: arguments, the environment, a clock. Out: results on standard output, everything else on
 * standard error, an exit code. Nothing here takes, returns or stores null, save fields that
 * picocli fills.
 */
package traytally.cli;
