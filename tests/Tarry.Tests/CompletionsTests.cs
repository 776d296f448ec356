namespace Tarry.Tests;

public class CompletionsTests
{
    [Theory]
    [InlineData("tarry comp", "compare completions")]
    [InlineData("tarry export pads --for", "--format")]
    [InlineData("tarry export pads --format data", "datapackage")]
    [InlineData("tarry completions z", "zsh")]
    public async Task Bash_OfAHalfTypedLine_OffersWhatFits(string line, string offered)
    {
        var bash = Requirement.Program("bash", "bash");
        using var folder = new TemporaryFolder();
        var program = folder.Write("tarry", $"#!/bin/sh\nexec dotnet '{Path.Combine(AppContext.BaseDirectory, "tarry.dll")}' \"$@\"\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(program, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        }

        folder.Write("script", await ProgramRun.Done("completions", "bash"));
        folder.Write("ask", """
            PATH="$PWD:$PATH"
            source ./script
            COMP_LINE=$1; COMP_POINT=${#1}; read -ra COMP_WORDS <<< "$1"; COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
            _tarry
            echo "${COMPREPLY[@]}"
            """);
        var answer = await OtherProgram.Done(bash, folder.Path, "ask", line);
        Assert.Equal(offered.Split(' ').Order(StringComparer.Ordinal), answer.Trim().Split(' ').Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("zsh", "compdef")]
    [InlineData("fish", "complete -c tarry")]
    [InlineData("pwsh", "Register-ArgumentCompleter")]
    public async Task Completions_OfOtherShells_RegisterThemselves(string shell, string how) =>
        Assert.Contains(how, await ProgramRun.Done("completions", shell));

    [Fact]
    public async Task Completions_OfAnUnknownShell_IsWrongUse() => Assert.Equal(2, (await ProgramRun.Tarry("completions", "csh")).ExitCode);
}
