namespace FeatureMatrix.Benchmarks.Collections;

/// <summary>How much a generated collection holds.</summary>
/// <param name="Name">The letter it goes by.</param>
/// <param name="Titles">Titles.</param>
/// <param name="Setups">Setups that are asked about.</param>
/// <param name="Cards">Cards; each has four setups for each version of its drivers.</param>
/// <param name="Chips">Chips, each with one driver branch for Windows 9x and one for Windows 2000 and XP.</param>
/// <param name="Versions">Versions of each of the two branches; each version installs on two systems.</param>
/// <param name="Engines">Engines: the profiles of needs that titles share.</param>
internal sealed record CollectionSize(string Name, int Titles, int Setups, int Cards, int Chips, int Versions, int Engines)
{
    /// <summary>Small, to look at by eye.</summary>
    public static CollectionSize S { get; } = new("S", 50, 10, 3, 2, 1, 6);

    /// <summary>What one careful person has.</summary>
    public static CollectionSize M { get; } = new("M", 1_000, 100, 13, 5, 2, 40);

    /// <summary>What a club has.</summary>
    public static CollectionSize L { get; } = new("L", 5_000, 1_000, 50, 16, 5, 120);

    /// <summary>Beyond what anybody has; shows the curve.</summary>
    public static CollectionSize Xl { get; } = new("XL", 20_000, 5_000, 250, 60, 5, 300);

    /// <summary>Sixty cards against a large library, for decisions.</summary>
    public static CollectionSize D { get; } = new("D", 2_000, 240, 60, 20, 1, 80);

    /// <summary>A workbook's worth: 5,000 titles on 200 setups.</summary>
    public static CollectionSize W { get; } = new("W", 5_000, 200, 50, 16, 1, 120);

    /// <summary>All sizes.</summary>
    public static IReadOnlyList<CollectionSize> All { get; } = [S, M, L, Xl, D, W];

    /// <summary>The size with a name.</summary>
    public static CollectionSize Of(string name) => All.FirstOrDefault(size => string.Equals(size.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? throw new ArgumentException($"no size '{name}': S, M, L, XL, D or W", nameof(name));
}
