using FeatureMatrix.Rendering.Site;

namespace FeatureMatrix.Cli;

/// <summary>Where templates come from.</summary>
internal static class Templates
{
    /// <summary>Our templates, with a folder of the user's laid over them.</summary>
    public static TemplateSet Read(string? users)
    {
        if (users is not null && !Directory.Exists(users))
            throw new UsageException($"There is no folder {users}.");
        try
        {
            return TemplateSet.Read(Path.Combine(AppContext.BaseDirectory, "templates"), users);
        }
        catch (TemplateFaultException fault)
        {
            throw new UsageException(fault.Message);
        }
    }
}
