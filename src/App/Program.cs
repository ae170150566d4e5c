using Ramwright.App.CommandLine;

Console.OutputEncoding = System.Text.Encoding.UTF8;
return await new RamwrightCommand(Console.Out, Console.Error).RunAsync(args);
