namespace Ramwright.Planning.Sequence;

/// <summary>Every state met in a search, once, numbered from 0: steps done, tool, posture; the least cost to it and from which state that came.</summary>
/// <remarks>Flat arrays and open addressing: a search meets thousands of states, and none of them is an object.</remarks>
internal sealed class StateTable(int words)
{
    private const int Empty = -1;

    private ulong[] done = new ulong[64 * words];
    private State[] states = new State[64];
    private int[] slots = Slots(128);
    private int count;

    /// <param name="Parent">Number of the state that this one was reached from; -1 at the start.</param>
    public readonly record struct State(int Tool, int Posture, long Cost, int Parent);

    public State this[int number] => states[number];

    public ReadOnlySpan<ulong> Done(int number) => done.AsSpan(number * words, words);

    /// <summary>Takes a state in, or a cheaper way to one known.</summary>
    /// <returns>Its number, or -1 where it is known at no greater cost.</returns>
    public int Improve(ReadOnlySpan<ulong> steps, State state)
    {
        var slot = SlotOf(steps, state);
        var number = slots[slot];
        if (number == Empty)
            return Add(slot, steps, state);
        if (states[number].Cost <= state.Cost)
            return -1;
        states[number] = state;
        return number;
    }

    /// <summary>From the start to a state, both included.</summary>
    public Stack<int> PathTo(int number)
    {
        var path = new Stack<int>();
        for (; number >= 0; number = states[number].Parent)
            path.Push(number);
        return path;
    }

    private int Add(int slot, ReadOnlySpan<ulong> steps, State state)
    {
        if (count == states.Length)
        {
            Array.Resize(ref states, 2 * count);
            Array.Resize(ref done, 2 * count * words);
        }

        steps.CopyTo(done.AsSpan(count * words));
        (states[count], slots[slot]) = (state, count);
        if (2 * ++count > slots.Length)
            Rehash();
        return count - 1;
    }

    private int SlotOf(ReadOnlySpan<ulong> steps, State state)
    {
        var hash = (ulong)((state.Tool + 1) * 8191 + state.Posture + 1);
        foreach (var word in steps)
        {
            hash = (hash ^ word) * 0x9E3779B97F4A7C15UL;
            hash ^= hash >> 32;
        }

        for (var slot = (int)hash & (slots.Length - 1); ; slot = (slot + 1) & (slots.Length - 1))
        {
            if (slots[slot] is var number && (number == Empty || IsAt(number, steps, state)))
                return slot;
        }
    }

    private bool IsAt(int number, ReadOnlySpan<ulong> steps, State state) =>
        states[number].Tool == state.Tool && states[number].Posture == state.Posture && Done(number).SequenceEqual(steps);

    private void Rehash()
    {
        slots = Slots(2 * slots.Length);
        for (var number = 0; number < count; number++)
            slots[SlotOf(Done(number), states[number])] = number;
    }

    private static int[] Slots(int size)
    {
        var empty = new int[size];
        Array.Fill(empty, Empty);
        return empty;
    }
}
