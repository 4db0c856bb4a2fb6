using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FeatureMatrix.Loading.Faults;

namespace FeatureMatrix.Cli;

/// <summary>
/// Faults as SARIF 2.1.0 (OASIS Standard, 27 March 2020), which code-review tools show beside the lines. Paths are relative to the
/// collection's folder.
/// </summary>
internal static class SarifLog
{
    private const string Base = "COLLECTION";

    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };

    public static string Write(IReadOnlyList<Fault> faults, string version)
    {
        var codes = faults.Select(fault => fault.Code).Distinct().Order(StringComparer.Ordinal).ToList();
        var log = new JsonObject
        {
            ["version"] = "2.1.0",
            ["runs"] = new JsonArray(new JsonObject
            {
                ["tool"] = new JsonObject
                {
                    ["driver"] = new JsonObject
                    {
                        ["name"] = "FeatureMatrix",
                        ["version"] = version,
                        ["rules"] = new JsonArray([.. codes.Select(code => new JsonObject { ["id"] = code })]),
                    },
                },
                ["columnKind"] = "utf16CodeUnits",
                ["results"] = new JsonArray([.. faults.Select(fault => Result(fault, codes.IndexOf(fault.Code)))]),
            }),
        };
        return log.ToJsonString(Readable) + "\n";
    }

    private static JsonObject Result(Fault fault, int rule)
    {
        var physical = new JsonObject { ["artifactLocation"] = new JsonObject { ["uri"] = Uri(fault.Origin.File), ["uriBaseId"] = Base } };
        if (fault.Origin.Line > 0)
            physical["region"] = new JsonObject { ["startLine"] = fault.Origin.Line, ["startColumn"] = fault.Origin.Column };
        return new JsonObject
        {
            ["ruleId"] = fault.Code,
            ["ruleIndex"] = rule,
            ["level"] = fault.Severity == Severity.Error ? "error" : "warning",
            ["message"] = new JsonObject { ["text"] = fault.Message },
            ["locations"] = new JsonArray(new JsonObject { ["physicalLocation"] = physical }),
        };
    }

    private static string Uri(string path) => string.Join('/', path.Split('/').Select(System.Uri.EscapeDataString));
}
