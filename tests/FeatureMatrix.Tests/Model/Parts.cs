using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Model;

/// <summary>
/// Parts to speak of: two chips, the first on two cards; a branch with versions 0 to 3 for Windows 98 and another that was for
/// Windows 98, then for both systems, then for Windows 2000 alone.
/// </summary>
internal static class Parts
{
    public static readonly Evidence Word = new(Grade.Documented, null, Origin.None);
    public static readonly Os Win98 = new() { Id = "windows-98se", Name = "Windows 98 SE" };
    public static readonly Os Win2000 = new() { Id = "windows-2000", Name = "Windows 2000" };
    public static readonly Feature Direct3D = new() { Id = "direct3d", Name = "Direct3D", Family = "api", Levels = ["5", "6", "7"], IsApi = true, Evidence = Word };
    public static readonly Feature OpenGl = new() { Id = "opengl", Name = "OpenGL", Family = "api", Levels = ["1.1", "1.2"], IsApi = true, Evidence = Word };
    public static readonly Feature Fog = new() { Id = "fog-table", Name = "Table fog", Family = "fog", Evidence = Word };
    public static readonly Chip Heron = new() { Id = "heron", Name = "Heron" };
    public static readonly Chip Crane = new() { Id = "crane", Name = "Crane" };
    public static readonly Card Heron16 = new() { Id = "heron-16", Name = "Heron 16", Chip = Heron, Evidence = Word };
    public static readonly Card Heron8 = new() { Id = "heron-8", Name = "Heron 8", Chip = Heron, Evidence = Word };
    public static readonly Card Crane16 = new() { Id = "crane-16", Name = "Crane 16", Chip = Crane, Evidence = Word };
    public static readonly DriverBranch Steady = Branch("steady", [Win98], [Win98], [Win98], [Win98]);
    public static readonly DriverBranch Moving = Branch("moving", [Win98], [Win98, Win2000], [Win2000], [Win2000]);

    private static DriverBranch Branch(string id, params IReadOnlyList<Os>[] oses)
    {
        var branch = new DriverBranch { Id = id, Name = id };
        branch.Link([.. oses.Select((systems, order) => new Driver { Id = $"{id}@{order}", Branch = branch, Version = $"{order}", Order = order, Oses = systems, Evidence = Word })]);
        return branch;
    }
}
