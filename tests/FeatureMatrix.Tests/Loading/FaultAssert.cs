using FeatureMatrix.Tests.Support;

namespace FeatureMatrix.Tests.Loading;

/// <summary>Compares all faults of a world, with their places and exact texts, in their order.</summary>
internal static class FaultAssert
{
    public static void Gives(string yaml, params string[] faults)
    {
        var found = Worlds.Try(yaml).Faults.Select(fault => fault.ToString()).ToList();
        if (!found.SequenceEqual(faults))
            Assert.Fail($"expected:\n{string.Join('\n', faults)}\nfound:\n{string.Join('\n', found)}");
    }
}
