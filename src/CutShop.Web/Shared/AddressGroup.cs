using System.Net;
using System.Net.Sockets;

namespace CutShop.Web.Shared;

/// <summary>Addresses that one customer of a network has, counted as one: an IPv4 address alone, of IPv6 the first 64 bits (RFC 6177, RFC 4291 2.5.4).</summary>
public static class AddressGroup
{
    private const int NetworkBytes = 8;

    /// <summary>The group that a request comes from.</summary>
    public static IPAddress Of(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return Of(context.Connection.RemoteIpAddress);
    }

    /// <summary>The group of an address, by its first address.</summary>
    public static IPAddress Of(IPAddress? address)
    {
        if (address is null or { AddressFamily: not AddressFamily.InterNetworkV6 })
            return address ?? IPAddress.None;
        if (address.IsIPv4MappedToIPv6)
            return address.MapToIPv4();
        var bytes = address.GetAddressBytes();
        bytes.AsSpan(NetworkBytes).Clear();
        return new(bytes);
    }
}
