using Tarry;
using Tarry.Output;

return await CommandLine.RunAsync(args, Terminal.OfThisProcess());
