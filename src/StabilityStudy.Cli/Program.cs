using System.Text;
using StabilityStudy.Cli;
using StabilityStudy.Cli.Console;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return (int)await Application.RunAsync(args, Terminal.OfProcess(), CancellationToken.None);
