using FeatureMatrix.Importing;

namespace FeatureMatrix.Tests.Importing;

public class Reading_memory_chips_from_photos
{
    private static string Told(MemoryChipReading reading)
    {
        var candidates = MemoryChips.Candidates(reading);
        return string.Join("; ", [
            .. candidates.Outcomes.Select(o => $"{o.Kibibytes / 1024.0:0.##} MiB {o.BusBits} bit"),
            .. candidates.Looks.Select(l => $"{l.Look} {l.WorstRemaining}"),
        ]);
    }

    // Arithmetic by hand: 4 chips of 16 Mbit, 16 bits wide: 4 × 2 MiB, 4 × 16 bits.
    [Fact]
    public void Count_width_and_density_give_bus_and_memory() => Assert.Equal(
        "8 MiB 64 bit", Told(new MemoryChipReading { Front = 4, Back = 0, WidthBits = 16, Megabits = 16, Banks = 1 }));

    [Fact]
    public void Two_banks_halve_the_bus() => Assert.Equal(
        "32 MiB 128 bit", Told(new MemoryChipReading { Front = 4, Back = 4, WidthBits = 32, Megabits = 32, Banks = 2 }));

    [Fact]
    public void Unseen_sharing_of_lines_leaves_the_bus_open() => Assert.Equal(
        "32 MiB 128 bit; 32 MiB 256 bit; ReadingOfBusWidth 1",
        Told(new MemoryChipReading { Front = 8, Back = 0, WidthBits = 32, Megabits = 32 }));

    [Fact]
    public void Unseen_back_doubles_or_not() => Assert.Equal(
        "8 MiB 64 bit; 16 MiB 128 bit; PhotoOfBack 1; ReadingOfMemory 1; ReadingOfBusWidth 1",
        Told(new MemoryChipReading { Front = 4, WidthBits = 16, Megabits = 16, Banks = 1 }));

    [Fact]
    public void Unread_marking_is_settled_by_a_photo_of_it()
    {
        var candidates = MemoryChips.Candidates(new MemoryChipReading { Front = 4, Back = 0, Banks = 1 });
        Assert.Equal(4 * 10, candidates.Layouts.Count); // four widths, ten densities: 512 KiB to 256 MiB on 16 to 128 bits
        Assert.Equal(new MemoryLookValue(MemoryLook.PhotoOfMarking, 1), candidates.Looks[0]);
    }

    [Fact]
    public void Known_memory_narrows_an_unread_marking() => Assert.Equal(
        "16 MiB 16 bit; 16 MiB 32 bit; 16 MiB 64 bit; 16 MiB 128 bit; PhotoOfMarking 1; ReadingOfBusWidth 1",
        Told(new MemoryChipReading { Front = 4, Back = 0, Banks = 1, Kibibytes = 16 * 1024 }));

    [Theory]
    [InlineData(4, 16, 64)] // 4 × 16 Mbit is 8 MiB, not the 64 MiB that the seller states
    [InlineData(0, 16, 8)]
    [InlineData(-4, 16, 8)]
    [InlineData(int.MaxValue, int.MaxValue, 8)]
    public void Readings_that_contradict_each_other_leave_nothing(int front, int megabits, int mebibytes) => Assert.Equal(
        "", Told(new MemoryChipReading { Front = front, Back = 0, WidthBits = 16, Megabits = megabits, Kibibytes = mebibytes * 1024 }));

    /// <summary>Whatever is true, each look that a reading advises leaves no more outcomes than it promised.</summary>
    [Fact]
    public void Looks_keep_their_promise()
    {
        var reading = new MemoryChipReading { Front = 4 };
        var candidates = MemoryChips.Candidates(reading);
        foreach (var truth in candidates.Layouts)
        {
            Check(MemoryLook.PhotoOfMarking, reading with { WidthBits = truth.WidthBits, Megabits = truth.Megabits });
            Check(MemoryLook.PhotoOfBack, reading with { Back = truth.Chips - 4 });
            Check(MemoryLook.ReadingOfMemory, reading with { Kibibytes = truth.Kibibytes });
            Check(MemoryLook.ReadingOfBusWidth, reading with { BusBits = truth.BusBits });
        }

        void Check(MemoryLook look, MemoryChipReading after) => Assert.InRange(
            MemoryChips.Candidates(after).Outcomes.Count, 1, candidates.Looks.Single(l => l.Look == look).WorstRemaining);
    }
}
