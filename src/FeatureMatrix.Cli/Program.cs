using FeatureMatrix.Cli;

return Application.Run(args, Terminal.OfConsole());
