namespace FeatureMatrix.Mutants;

public sealed class KeepTheLibrary
{
    /// <summary>The folder to keep it in is named by the environment; without that there is nothing to keep.</summary>
    [Fact]
    public void The_library_with_its_mutants_is_kept()
    {
        var library = Path.Combine(AppContext.BaseDirectory, "FeatureMatrix.dll");
        Assert.True(File.Exists(library));
        if (Environment.GetEnvironmentVariable("FEATUREMATRIX_MUTANTS") is { } folder)
            File.Copy(library, Path.Combine(folder, "FeatureMatrix.dll"), overwrite: true);
    }
}
