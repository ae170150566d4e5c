"""A device that answers lines over TCP as SCPI devices do: line_peer.py PORT [FAULT] [AT] [FIRST].

FAULT happens at question AT, once: nan, absurd, text, half (half an answer, then closed), close, silent.
crlf and echo hold all the time. FIRST is the stroke that comes first. Prints 'ready' when it listens.
"""
import socket
import sys
import time

from strokes import Strokes

port = int(sys.argv[1])
fault = sys.argv[2] if len(sys.argv) > 2 else "none"
at = int(sys.argv[3]) if len(sys.argv) > 3 else -1
strokes = Strokes(int(sys.argv[4]) if len(sys.argv) > 4 else 0)
end = b"\r\n" if fault == "crlf" else b"\n"

server = socket.socket()
server.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
server.bind(("127.0.0.1", port))
server.listen(1)
print("ready", flush=True)

asked = 0
while True:
    client, _ = server.accept()
    client.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
    pending = b""
    while True:
        try:
            got = client.recv(4096)
        except OSError:
            break
        if not got:
            break
        pending += got
        stop = False
        while b"\n" in pending:
            line, pending = pending.split(b"\n", 1)
            if line.strip() != b"READ?":
                client.sendall(b"ERROR" + end)
                continue
            value = strokes.next()
            asked += 1
            if fault == "echo":
                client.sendall(line + end)
            if asked == at:
                if fault == "close":
                    stop = True
                elif fault == "half":
                    client.sendall(b"70")
                    stop = True
                elif fault == "silent":
                    time.sleep(3)
                    stop = True
                elif fault in ("nan", "absurd", "text"):
                    client.sendall({"nan": b"9.91E37", "absurd": b"123456", "text": b"WAIT"}[fault] + end)
                    continue
                if stop:
                    break
            client.sendall(f"{value:.4E}".encode() + end)
        if stop:
            break
    client.close()
