using System.Globalization;
using System.Text;
using StabilityStudy.Cli;
using StabilityStudy.Cli.Console;

// No number or word depends on the language of the computer; what is written says how it writes.
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return (int)await Application.RunAsync(args, Terminal.OfProcess(), CancellationToken.None);
