using System.Security.Cryptography;

namespace Tarry.Web.Hosting;

/// <summary>A secret of this launch, which pages carry as a cookie.</summary>
internal sealed class LaunchToken
{
    private const int Bytes = 32;

    /// <summary>The cookie's name at a port: cookies know no ports, and the program may run at several.</summary>
    /// <param name="port">The port on the loopback address.</param>
    public static string CookieName(int port) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"tarry-launch-{port}");

    /// <summary>The secret.</summary>
    public string Value { get; } = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>Whether this is the secret; takes as long for every wrong one.</summary>
    public bool Is(string? value) => value is not null
        && CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(value), System.Text.Encoding.UTF8.GetBytes(Value));
}
