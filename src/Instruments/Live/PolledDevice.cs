using System.Runtime.CompilerServices;
using Ramwright.Instruments.Connections;
using Ramwright.Instruments.Devices;
using Ramwright.Instruments.Lines;
using Ramwright.Instruments.Runs;
using Ramwright.Metrology.Quantities;

namespace Ramwright.Instruments.Live;

/// <summary>A device that is asked again and again; strokes in its readings are runs. What happens to cable, power and wits of the device is told, never guessed over.</summary>
internal sealed class PolledDevice(Connection.Polled connection, DeviceDescription description, LiveSetting setting, TimeProvider clock) : IPeakDevice
{
    private const int MostBad = 3;
    private static readonly TimeSpan s_betweenShown = TimeSpan.FromMilliseconds(20);
    private int _runs = setting.RunsBefore;

    public DeviceDescription Description { get; } = description;

    public Task<PeakReading> RunAsync(CancellationToken cancel = default) => Watched.FirstPeakAsync(this, cancel);

    public async IAsyncEnumerable<PeakEvent> WatchAsync([EnumeratorCancellation] CancellationToken cancel = default)
    {
        var detector = new RunDetector(setting.RuleFor(connection.Signal), connection.Signal.Lag ?? Description.TimeConstant, Description.Resolution);
        var start = clock.GetTimestamp();
        DateTimeOffset? lostAt = null;
        var wait = setting.FirstWait;
        while (true)
        {
            cancel.ThrowIfCancellationRequested();
            var opened = await ExchangeOpener.OpenAsync(connection, cancel);
            var trouble = opened.Trouble is { } closed ? new Answer.Trouble(closed.Fault, closed.What, IsFinal: true) : null;
            if (opened.Exchange is { } exchange)
            {
                await using (exchange)
                {
                    var shown = clock.GetTimestamp();
                    for (var bad = 0; trouble is null;)
                    {
                        var asked = clock.GetTimestamp();
                        var answer = Understood(await exchange.AskAsync(cancel));
                        if (answer is Answer.Trouble told)
                        {
                            trouble = told.IsFinal || ++bad >= MostBad ? told : null;
                        }
                        else if (answer is Answer.Reading reading)
                        {
                            bad = 0;
                            wait = setting.FirstWait;
                            if (lostAt is { } since)
                            {
                                lostAt = null;
                                yield return new PeakEvent.Back(clock.GetUtcNow() - since);
                            }
                            var sample = new PressureSample(0.5 * (clock.GetElapsedTime(start, asked).TotalSeconds + clock.GetElapsedTime(start).TotalSeconds), reading.Pressure.Bar);
                            var outcome = detector.Add(sample);
                            if (outcome is not null)
                                yield return Event(outcome);
                            else if (detector.IsRunning && reading.Pressure >= connection.Signal.Ends && clock.GetElapsedTime(shown) >= s_betweenShown)
                            {
                                shown = clock.GetTimestamp();
                                yield return new PeakEvent.Rising(_runs + 1, TimeSpan.FromSeconds(sample.Seconds - detector.BeganSeconds), reading.Pressure);
                            }
                        }
                        var rest = connection.Polling.Every - clock.GetElapsedTime(asked);
                        if (trouble is null && rest > TimeSpan.Zero)
                            await Task.Delay(rest, clock, cancel);
                    }
                }
            }
            if (detector.Lose() is { } broken)
                yield return Event(broken);
            if (lostAt is null)
            {
                lostAt = clock.GetUtcNow();
                yield return new PeakEvent.Lost(trouble!.Fault, trouble.What, lostAt.Value);
            }
            await Task.Delay(wait, clock, cancel);
            wait = wait * 2 < setting.LongestWait ? wait * 2 : setting.LongestWait;
        }
    }

    private Answer Understood(Exchanged exchanged) => exchanged switch
    {
        Exchanged.Value value => setting.PressureOf(connection.Signal, value.Number) is { } pressure
            ? new Answer.Reading(pressure)
            : new Answer.Trouble(DeviceFault.Absurd, "the device says a value that no pressure has", IsFinal: false),
        Exchanged.Bad bad => new Answer.Trouble(bad.Fault, bad.What, IsFinal: false),
        Exchanged.Broken broken => new Answer.Trouble(broken.Fault, broken.What, IsFinal: true),
        _ => throw new ArgumentOutOfRangeException(nameof(exchanged), exchanged, "No such answer."),
    };

    private PeakEvent Event(RunOutcome outcome) => outcome switch
    {
        RunOutcome.Full full => new PeakEvent.Peaked(new(++_runs, full.Peak.Value, clock.GetUtcNow(), full.Peak.Highest >= Description.Range.Max) { Estimate = full.Peak }),
        RunOutcome.NotTaken not => new PeakEvent.NotTaken(not.Why, not.Highest),
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No such outcome."),
    };

    private abstract record Answer
    {
        private Answer() { }

        public sealed record Reading(Pressure Pressure) : Answer;

        /// <summary>No reading; <paramref name="IsFinal"/> when the line must be opened anew.</summary>
        public sealed record Trouble(DeviceFault Fault, string What, bool IsFinal) : Answer;
    }
}
