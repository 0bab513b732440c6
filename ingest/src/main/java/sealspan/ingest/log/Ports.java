package sealspan.ingest.log;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.OptionalInt;

/** Ports of this machine's loopback address, 127.0.0.1. */
final class Ports {
  private static final int CONNECT_LIMIT_MILLIS = 500;

  private Ports() {}

  /**
   * The port asked for; else the preferred one if it is free; else any free one.
   *
   * @throws LogException when the port asked for is taken
   */
  static int choose(OptionalInt asked, OptionalInt preferred) throws IOException {
    if (asked.isPresent()) {
      if (!isFree(asked.getAsInt())) {
        throw new LogException(
            "Port "
                + asked.getAsInt()
                + " on 127.0.0.1 is in use by another program, or may not be used by you. Choose"
                + " another port, or name none and a free one is taken.");
      }
      return asked.getAsInt();
    }
    if (preferred.isPresent() && isFree(preferred.getAsInt())) {
      return preferred.getAsInt();
    }
    return free(0);
  }

  /** A free port other than the one given. */
  static int free(int other) throws IOException {
    while (true) {
      try (ServerSocket s = new ServerSocket(0, 1, loopback())) {
        if (s.getLocalPort() != other) {
          return s.getLocalPort();
        }
      }
    }
  }

  static boolean accepts(int port) {
    try (Socket s = new Socket()) {
      s.connect(new InetSocketAddress(loopback(), port), CONNECT_LIMIT_MILLIS);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  private static boolean isFree(int port) {
    try (ServerSocket s = new ServerSocket()) {
      s.setReuseAddress(true);
      s.bind(new InetSocketAddress(loopback(), port), 1);
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  private static InetAddress loopback() throws IOException {
    return InetAddress.getByAddress("127.0.0.1", new byte[] {127, 0, 0, 1});
  }
}
