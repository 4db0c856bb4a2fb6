using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace FeatureMatrix.Cli.Preview;

/// <summary>
/// Serves a preview to this machine alone: it listens on the loopback address, answers GET and HEAD for its own host name only, and knows
/// nothing but the files of the build, so that no path leads anywhere else. Each connection has one answer and a limited time.
/// </summary>
internal sealed class PreviewServer : IDisposable
{
    private const int MostConnections = 64;
    private const int MostHeaderBytes = 16 * 1024;

    private readonly TcpListener _listener;
    private readonly PreviewFeed _feed;
    private readonly TimeSpan _patience;
    private readonly SemaphoreSlim _places = new(MostConnections);

    /// <summary>Starts to listen.</summary>
    /// <param name="feed">What to serve.</param>
    /// <param name="port">The port; 0 for any that is free.</param>
    /// <param name="patience">How long a client may take to ask, and again to take its answer.</param>
    public PreviewServer(PreviewFeed feed, int port, TimeSpan patience)
    {
        _feed = feed;
        _patience = patience;
        _listener = new TcpListener(IPAddress.Loopback, port);
        _listener.Start();
    }

    /// <summary>Where it listens.</summary>
    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>The address to open.</summary>
    public string Address => $"http://127.0.0.1:{Port.ToString(CultureInfo.InvariantCulture)}/";

    /// <summary>Answers until stopped.</summary>
    public async Task Run(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            TcpClient client;
            try
            {
                await _places.WaitAsync(stop);
                client = await _listener.AcceptTcpClientAsync(stop);
            }
            catch (OperationCanceledException)
            {
                return;
            }

            _ = Answer(client, stop);
        }
    }

    public void Dispose()
    {
        _listener.Dispose();
        _places.Dispose();
    }

    private async Task Answer(TcpClient client, CancellationToken stop)
    {
        try
        {
            using (client)
            {
                var stream = client.GetStream();
                using var asking = CancellationTokenSource.CreateLinkedTokenSource(stop);
                asking.CancelAfter(_patience);
                var answer = await AnswerTo(await ReadHead(stream, asking.Token), stop);
                using var taking = CancellationTokenSource.CreateLinkedTokenSource(stop);
                taking.CancelAfter(_patience);
                await stream.WriteAsync(answer.ToBytes(), taking.Token);
            }
        }
        catch (Exception problem) when (problem is IOException or SocketException or OperationCanceledException or ObjectDisposedException)
        {
            // The client went away or took too long; the next one is not to suffer for it.
        }
        finally
        {
            if (!stop.IsCancellationRequested)
                _places.Release();
        }
    }

    /// <summary>The answer; whoever has seen all there is waits a while for something new. A page that was left keeps its place for so long.</summary>
    private async Task<PreviewAnswer> AnswerTo(string? head, CancellationToken stop)
    {
        var change = _feed.Change;
        var answer = PreviewAnswer.To(head, Port, _feed.State);
        if (!answer.IsKnown)
            return answer;
        await Task.WhenAny(change, Task.Delay(_patience / 2, stop));
        return PreviewAnswer.To(head, Port, _feed.State);
    }

    /// <summary>The request up to its empty line; what was there where the client ended early; null past the limit.</summary>
    private static async Task<string?> ReadHead(NetworkStream stream, CancellationToken limit)
    {
        var bytes = new byte[MostHeaderBytes];
        var length = 0;
        while (length < bytes.Length)
        {
            var read = await stream.ReadAsync(bytes.AsMemory(length), limit);
            length += read;
            if (read == 0 || bytes.AsSpan(0, length).IndexOf("\r\n\r\n"u8) >= 0)
                return Encoding.Latin1.GetString(bytes, 0, length);
        }

        return null;
    }
}
