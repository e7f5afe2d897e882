using System.Net;
using System.Net.Sockets;

namespace CutShop.Testing.Stores;

/// <summary>Ports of this machine that nobody listens on.</summary>
internal static class FreePort
{
    /// <summary>One of them.</summary>
    public static int Find()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
