namespace FeatureMatrix.Importing.Executables;

/// <summary>A sighting that speaks for an interface, and the library whose name it is, if it is one.</summary>
internal sealed record UseSighting(ApiUse Use, ApiLibraryName? Library, Sighting Sighting);

/// <summary>Everything one file says.</summary>
internal sealed record FileReading(
    string File, IReadOnlyList<UseSighting> Uses, IReadOnlyList<Sighting> Extensions, IReadOnlyList<ExecutableFault> Faults)
{
    public static FileReading Of(TitleFile file)
    {
        var program = PortableExecutable.Read(file.Bytes.Span);
        var uses = new List<UseSighting>();
        var extensions = new List<Sighting>();
        if (file.Bytes.Length <= PortableExecutable.LargestFile)
        {
            uses.AddRange(program.Libraries.SelectMany(l => Imported(file.Name, l)));
            Texts(file, uses, extensions);
            uses.AddRange(Interfaces(file));
        }

        return new FileReading(file.Name, uses, extensions, program.Faults);
    }

    private static IEnumerable<UseSighting> Imported(string file, ImportedLibrary library)
    {
        var kind = library.Delayed ? SightingKind.DelayedImport : SightingKind.Import;
        if (ApiSigns.Libraries.TryGetValue(library.Name, out var known))
            yield return new UseSighting(known.Use, known, new Sighting(file, library.Offset, kind, library.Name));
        foreach (var function in library.Functions)
        {
            if (function.Name is { } name && ApiSigns.Names.TryGetValue(name, out var use))
                yield return new UseSighting(use, null, new Sighting(file, function.Offset, kind, name));
        }
    }

    /// <summary>Names in the text of the file, without those that the import table has already given.</summary>
    private static void Texts(TitleFile file, List<UseSighting> uses, List<Sighting> extensions)
    {
        var seen = uses.Select(u => u.Sighting.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var token in TextTokens.In(file.Bytes))
        {
            var library = ApiSigns.Libraries.GetValueOrDefault(token.Text);
            var use = library?.Use ?? ApiSigns.Names.GetValueOrDefault(token.Text);
            var isExtension = use is null && IsExtension(token.Text);
            if ((use is null && !isExtension) || !seen.Add(token.Text))
                continue;
            var sighting = new Sighting(file.Name, token.Offset, SightingKind.Text, token.Text);
            if (use is null)
                extensions.Add(sighting);
            else
                uses.Add(new UseSighting(use, library, sighting));
        }
    }

    private static IEnumerable<UseSighting> Interfaces(TitleFile file) =>
        from id in ApiSigns.InterfaceIds
        let at = file.Bytes.Span.IndexOf(id.Bytes)
        where at >= 0
        select new UseSighting(id.Use, null, new Sighting(file.Name, at, SightingKind.InterfaceId, id.Name));

    /// <summary>
    /// Whether a word has the form of an extension's name: <c>GL_</c>, <c>WGL_</c> or <c>GLX_</c>, the owner in capitals
    /// and digits, an underscore, and a rest that is not all capitals, as a constant's name would be.
    /// Source: the naming rules of the OpenGL extension registry.
    /// </summary>
    private static bool IsExtension(string word)
    {
        var parts = word.Split('_', 3);
        return parts is ["GL" or "WGL" or "GLX", { Length: >= 2 } owner, { Length: > 0 } name]
            && owner.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c))
            && name.Any(char.IsAsciiLetterLower)
            && !name.Contains('.', StringComparison.Ordinal);
    }
}
