using System.Globalization;
using Tarry.Findings.Soak;

// dotnet run -c Release --project tests/soak/Tarry.Findings.Soak -- [alike|clean|faults|layers|all] [STUDIES] [WORD IN THE DESIGN'S NAME]
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
var part = args.Length > 0 ? args[0] : "all";
var studies = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1000;
var word = args.Length > 2 ? args[2] : "";
if (part is "alike" or "all")
{
    ErrorRates.OfAlikeConditions(studies, word);
}

if (part is "clean" or "all")
{
    ErrorRates.OfCleanSessions(studies, word);
}

if (part is "faults" or "all")
{
    DetectionRates.OfFaults(studies, word);
}

if (part is "layers" or "all")
{
    DetectionRates.OfLayers(studies, word);
}
