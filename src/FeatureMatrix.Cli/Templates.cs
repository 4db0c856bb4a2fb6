using FeatureMatrix.Rendering.Site;

namespace FeatureMatrix.Cli;

/// <summary>Where templates come from.</summary>
internal static class Templates
{
    /// <summary>The folders that templates come from: ours, and over it the user's.</summary>
    public static IEnumerable<string> FoldersOf(string? users) => users is null ? [Ours] : [Ours, users];

    /// <summary>Our templates, with a folder of the user's laid over them.</summary>
    public static TemplateSet Read(string? users)
    {
        if (users is not null && !Directory.Exists(users))
            throw new UsageException($"There is no folder {users}.");
        try
        {
            return TemplateSet.Read(Ours, users);
        }
        catch (TemplateFaultException fault)
        {
            throw new UsageException(fault.Message);
        }
    }

    private static string Ours => Path.Combine(AppContext.BaseDirectory, "templates");
}
