namespace Tarry.Statistics.Uncertainty;

/// <summary>What is known of how a quantity is distributed about its estimate.</summary>
public enum UncertaintyDistribution
{
    /// <summary>Normal, stated by its standard uncertainty.</summary>
    Normal,

    /// <summary>Anywhere between two limits alike.</summary>
    Rectangular,

    /// <summary>Between two limits, as the sum of two equal rectangular ones.</summary>
    Triangular,

    /// <summary>Between two limits, dwelling at them, as a cycle does.</summary>
    Arcsine,
}
