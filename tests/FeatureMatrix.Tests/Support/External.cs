namespace FeatureMatrix.Tests.Support;

/// <summary>Things outside the project that a check needs: a Debian package's file, a command.</summary>
internal static class External
{
    private static bool OnCi => Environment.GetEnvironmentVariable("CI") == "true";

    /// <summary>The file, or a skipped test where it is missing; under <c>CI=true</c> a failed one.</summary>
    public static string File(string path, string debianPackage)
    {
        if (System.IO.File.Exists(path))
            return path;
        Missing($"{path} is missing; it comes with the Debian package {debianPackage}");
        return path;
    }

    /// <summary>The full path of a command on PATH; missing is skipped, or failed under <c>CI=true</c>.</summary>
    public static string Command(string name, string debianPackage)
    {
        var found = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, name)).FirstOrDefault(System.IO.File.Exists);
        if (found is null)
            Missing($"the command {name} is missing; it comes with the Debian package {debianPackage}");
        return found ?? name;
    }

    /// <summary>Skips the running test, or fails it under <c>CI=true</c>, where nothing may be missing.</summary>
    public static void Missing(string what)
    {
        if (OnCi)
            Assert.Fail(what);
        Assert.Skip(what);
    }
}
