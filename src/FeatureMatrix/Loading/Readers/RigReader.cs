using FeatureMatrix.Loading.Faults;
using FeatureMatrix.Loading.Texts;
using FeatureMatrix.Model;

namespace FeatureMatrix.Loading.Readers;

/// <summary>Rigs.</summary>
internal sealed class RigReader(Draft draft)
{
    private FaultList Faults => draft.Faults;

    public Rig Build(Shelf<Rig>.Item item)
    {
        var fields = item.Fields;
        var processor = fields.Inner("processor");
        var rig = new Rig
        {
            Id = item.Id,
            Name = fields.RequiredText("name"),
            ProcessorFamily = processor?.Text("family") ?? "",
            Megahertz = processor?.Value("clock", Quantities.Megahertz),
            Cores = processor?.Value("cores", Quantities.Whole(1, 64)),
            MemoryMebibytes = fields.Value("memory", Quantities.Mebibytes),
            Chipset = fields.Text("chipset"),
            Sound = fields.Text("sound"),
            Slots = [.. fields.Items("slots").Select(Slot).OfType<RigSlot>()],
            Monitor = Monitor(fields.Inner("monitor")),
            PowerPlugs = fields.Has("power") ? [.. fields.List("power").Select(plug => plug.Text.Trim()).Where(plug => plug != "none")] : null,
            Oses = draft.References.All(draft.Oses, fields.List("os")),
            Notes = fields.Text("notes"),
        };
        processor?.Done();
        return rig;
    }

    private RigSlot? Slot(Node node)
    {
        if (Fields.Of(node, "'slots'", Faults) is not { } fields)
            return null;
        var bus = fields.RequiredWord("bus") is { } word ? draft.Buses.Find(word, Faults) : null;
        var slot = new RigSlot
        {
            Bus = bus!,
            DocumentedVolts = CardReader.Volts(fields, "volts", Faults),
            Speed = fields.Value("speed", CardReader.Speed),
            Key = fields.Value("key", Quantities.Volts),
        };
        fields.Done();
        return bus is null ? null : slot;
    }

    private static Model.Monitor? Monitor(Fields? fields)
    {
        if (fields is null)
            return null;
        var monitor = new Model.Monitor(
            fields.RequiredText("name"),
            fields.Value("highest", Quantities.Mode),
            fields.Value("refresh", Quantities.Hertz),
            [.. fields.List("inputs").Select(input => input.Text.Trim())]);
        fields.Done();
        return monitor;
    }
}
