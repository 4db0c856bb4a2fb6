namespace FeatureMatrix.Cli.Preview;

/// <summary>What there is to see, and when that changes.</summary>
internal sealed class PreviewFeed
{
    private TaskCompletionSource _next = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile PreviewState _state = PreviewState.Nothing;

    /// <summary>What there is to see now.</summary>
    public PreviewState State => _state;

    /// <summary>Ends with the next change. Taken before <see cref="State"/> is looked at, it misses none.</summary>
    public Task Change => _next.Task;

    /// <summary>Shows something else.</summary>
    public void Show(PreviewState state)
    {
        _state = state;
        Interlocked.Exchange(ref _next, new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously)).SetResult();
    }
}
