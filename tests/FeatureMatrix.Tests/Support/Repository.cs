using System.Reflection;

namespace FeatureMatrix.Tests.Support;

/// <summary>Where the working copy lies, so that a test can read data, templates and goldens.</summary>
internal static class Repository
{
    /// <summary>Absolute path of the folder that holds FeatureMatrix.sln.</summary>
    public static string Root { get; } = typeof(Repository).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!;

    public static string PathTo(params string[] parts) => Path.Combine([Root, .. parts]);
}
