namespace FeatureMatrix.Cli.Preview;

/// <summary>
/// Waits until something happens in some folders. The system tells at once; where it does not, for example on a network drive, the wait
/// ends by itself and whoever waits looks for changes then.
/// </summary>
internal sealed class SourceWatch : IDisposable
{
    /// <summary>Programs write a file in several steps, and several files one after the other.</summary>
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(15);

    private readonly SemaphoreSlim _seen = new(0);
    private readonly List<FileSystemWatcher> _watchers = [];

    public SourceWatch(IEnumerable<string> folders)
    {
        foreach (var folder in folders)
        {
            try
            {
                var watcher = new FileSystemWatcher(folder) { IncludeSubdirectories = true };
                watcher.Changed += (_, _) => _seen.Release();
                watcher.Created += (_, _) => _seen.Release();
                watcher.Deleted += (_, _) => _seen.Release();
                watcher.Renamed += (_, _) => _seen.Release();
                _watchers.Add(watcher);
                watcher.EnableRaisingEvents = true;
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException)
            {
                // The system has no watch left, or cannot watch there: looking now and then has to do.
            }
        }
    }

    /// <summary>Waits for the next change, or for some time.</summary>
    public async Task Wait(TimeSpan atMost, CancellationToken stop)
    {
        if (!await _seen.WaitAsync(atMost, stop))
            return;
        await Task.Delay(Quiet, stop);
        while (await _seen.WaitAsync(TimeSpan.Zero, stop))
        {
        }
    }

    public void Dispose()
    {
        foreach (var watcher in _watchers)
            watcher.Dispose();
        _seen.Dispose();
    }
}
