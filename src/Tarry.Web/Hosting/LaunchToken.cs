using System.Security.Cryptography;

namespace Tarry.Web.Hosting;

/// <summary>A secret of this launch, which pages carry as a cookie.</summary>
internal sealed class LaunchToken
{
    private const int Bytes = 32;

    /// <summary>The cookie's name.</summary>
    public const string CookieName = "tarry-launch";

    /// <summary>The secret.</summary>
    public string Value { get; } = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>Whether this is the secret; takes as long for every wrong one.</summary>
    public bool Is(string? value) => value is not null
        && CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(value), System.Text.Encoding.UTF8.GetBytes(Value));
}
